package org.thumbseal.seek;

import java.util.Optional;
import org.thumbseal.quantity.Quantity;

/**
 * What the sealed result of a test at a station told.
 *
 * @param station where was blocked, counted from 0 at the patient end
 * @param source which document
 * @param vacuum how far it went
 * @param air what is known of flows
 */
public record StationTest(int station, Source source, Vacuum vacuum, Air air) {
  /**
   * A sealed result.
   *
   * @param id of the document
   * @param digest SHA-256 of its canonical form with the signature
   * @param file name of the file, without its folder
   */
  public record Source(String id, String digest, String file) {}

  /**
   * The plateau.
   *
   * @param level with its uncertainty in parts
   * @param stated as the result states it, kPa
   * @param limit that the criteria of the result ask for, kPa
   */
  public record Vacuum(Level level, Quantity stated, double limit) {
    /** Whether the value reaches the limit, uncertainty left aside. */
    boolean isEnough() {
      return level.kilopascals() >= limit;
    }

    /** Whether it is below the limit by more than its expanded uncertainty (ILAC-G8, w = U). */
    boolean isSurelyTooLow() {
      return stated.value() + stated.expandedUncertainty() <= limit;
    }
  }

  /**
   * Flows.
   *
   * @param ambient pressure of the day, kPa; the standard atmosphere where nobody knew it
   * @param speed pumping speed, L/min; absent where the test does not tell
   * @param decay what leaked in while the pump did not draw; absent where there was no decay
   */
  public record Air(double ambient, Optional<Quantity> speed, Optional<Decay> decay) {}

  /**
   * What leaked in while the pump did not draw.
   *
   * @param leak mL/min of ambient air
   * @param upperBound whether the resting pump may have leaked back, so that the path in front of
   *     it leaks this much at most
   */
  public record Decay(Quantity leak, boolean upperBound) {}

  /** The same at another station. */
  public StationTest at(int other) {
    return new StationTest(other, source, vacuum, air);
  }
}
