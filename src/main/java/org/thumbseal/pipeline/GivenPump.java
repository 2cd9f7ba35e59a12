package org.thumbseal.pipeline;

import java.util.Optional;
import org.thumbseal.capture.CaptureHeader;
import org.thumbseal.finding.SoundRecord;

/**
 * What is said of the pump under test and of what stands before it.
 *
 * @param asset id of the pump
 * @param jarLitres volume of the jar, L
 * @param pinched whether the hose between jar and pump was pinched for the decay
 * @param sound an earlier record of the same pump when it was sound
 */
public record GivenPump(
    Optional<String> asset,
    Optional<Double> jarLitres,
    boolean pinched,
    Optional<SoundRecord> sound) {
  /** Nothing said. */
  public static final GivenPump NONE =
      new GivenPump(Optional.empty(), Optional.empty(), false, Optional.empty());

  /** The same, of this pump. */
  public GivenPump withAsset(String id) {
    return new GivenPump(Optional.of(id), jarLitres, pinched, sound);
  }

  /** The same with a jar of this volume, L. */
  public GivenPump withJarLitres(double litres) {
    return new GivenPump(asset, Optional.of(litres), pinched, sound);
  }

  /** The same with the hose pinched for the decay, or not. */
  public GivenPump withPinched(boolean hose) {
    return new GivenPump(asset, jarLitres, hose, sound);
  }

  /** The same with a sound record to compare with. */
  public GivenPump against(Optional<SoundRecord> earlier) {
    return new GivenPump(asset, jarLitres, pinched, earlier);
  }

  /** As the record names it; a sound record of another pump does not count. */
  GivenPump namedBy(CaptureHeader header) {
    boolean samePump = header.fact("asset").equals(asset);
    return new GivenPump(Optional.empty(), jarLitres, pinched, sound.filter(s -> samePump));
  }

  /** Of it only what no header of a record holds. */
  GivenPump besidesHeader() {
    return NONE.against(sound);
  }
}
