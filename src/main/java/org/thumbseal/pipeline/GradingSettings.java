package org.thumbseal.pipeline;

import java.util.Optional;
import org.thumbseal.calibration.Calibrations;
import org.thumbseal.capture.CaptureHeader;
import org.thumbseal.finding.SoundRecord;
import org.thumbseal.grade.Criteria;
import org.thumbseal.wire.LineFormat;
import org.thumbseal.wire.PlainLines;

/**
 * What the user says about a test. What is not said here is looked for in the capture's header and
 * in what the sensor sends.
 *
 * @param criteria the limits
 * @param asset id of the pump
 * @param ambientKilopascals barometric pressure, kPa
 * @param altitudeMetres altitude of the place, m
 * @param jarLitres volume of the jar, L
 * @param sound an earlier record of the same pump when it was sound
 * @param calibrations of sensors; a test takes the one that was there when it began
 * @param pinched whether the hose between jar and pump was pinched for the decay
 * @param lines how the lines of a sensor are written that does not speak the wire protocol
 * @param sensor id of a sensor that does not say who it is
 * @param pumps what is known of pumps; where it has criteria they go before {@code criteria}
 */
public record GradingSettings(
    Criteria criteria,
    Optional<String> asset,
    Optional<Double> ambientKilopascals,
    Optional<Double> altitudeMetres,
    Optional<Double> jarLitres,
    Calibrations calibrations,
    Optional<SoundRecord> sound,
    boolean pinched,
    Optional<PlainLines> lines,
    Optional<String> sensor,
    KnownPumps pumps) {
  /** Of a sensor that says of itself what has to be known. */
  public GradingSettings(
      Criteria criteria,
      Optional<String> asset,
      Optional<Double> ambientKilopascals,
      Optional<Double> altitudeMetres,
      Optional<Double> jarLitres,
      Calibrations calibrations,
      Optional<SoundRecord> sound,
      boolean pinched) {
    this(
        criteria,
        asset,
        ambientKilopascals,
        altitudeMetres,
        jarLitres,
        calibrations,
        sound,
        pinched,
        Optional.empty(),
        Optional.empty(),
        KnownPumps.NONE);
  }

  /** Nothing said, default criteria. */
  public static final GradingSettings DEFAULT =
      new GradingSettings(
          Criteria.DEFAULT,
          Optional.empty(),
          Optional.empty(),
          Optional.empty(),
          Optional.empty(),
          Calibrations.NONE,
          Optional.empty(),
          false,
          Optional.empty(),
          Optional.empty(),
          KnownPumps.NONE);

  /** The same with other limits. */
  public GradingSettings withCriteria(Criteria limits) {
    return new GradingSettings(
        limits,
        asset,
        ambientKilopascals,
        altitudeMetres,
        jarLitres,
        calibrations,
        sound,
        pinched,
        lines,
        sensor,
        pumps);
  }

  /** The same for a pump. */
  public GradingSettings withAsset(String id) {
    return new GradingSettings(
        criteria,
        Optional.of(id),
        ambientKilopascals,
        altitudeMetres,
        jarLitres,
        calibrations,
        sound,
        pinched,
        lines,
        sensor,
        pumps);
  }

  /** The same for the pump that a record names; a sound record of another one does not count. */
  public GradingSettings forPumpOf(CaptureHeader header) {
    boolean samePump = header.fact("asset").equals(asset);
    return new GradingSettings(
        criteria,
        Optional.empty(),
        ambientKilopascals,
        altitudeMetres,
        jarLitres,
        calibrations,
        sound.filter(s -> samePump),
        pinched,
        lines,
        sensor,
        pumps);
  }

  /** The same with these calibrations. */
  public GradingSettings withCalibrations(Calibrations known) {
    return new GradingSettings(
        criteria,
        asset,
        ambientKilopascals,
        altitudeMetres,
        jarLitres,
        known,
        sound,
        pinched,
        lines,
        sensor,
        pumps);
  }

  /** The same with a sound record of the same pump to compare with. */
  public GradingSettings against(SoundRecord earlier) {
    return new GradingSettings(
        criteria,
        asset,
        ambientKilopascals,
        altitudeMetres,
        jarLitres,
        calibrations,
        Optional.of(earlier),
        pinched,
        lines,
        sensor,
        pumps);
  }

  /**
   * The same for a sensor that says little about itself.
   *
   * @param format how it writes its lines; empty for the wire protocol
   * @param id its id, where the user knows it
   */
  public GradingSettings withSensor(Optional<PlainLines> format, Optional<String> id) {
    return new GradingSettings(
        criteria,
        asset,
        ambientKilopascals,
        altitudeMetres,
        jarLitres,
        calibrations,
        sound,
        pinched,
        format,
        id,
        pumps);
  }

  /** The same with these pumps known. */
  public GradingSettings withPumps(KnownPumps known) {
    return new GradingSettings(
        criteria,
        asset,
        ambientKilopascals,
        altitudeMetres,
        jarLitres,
        calibrations,
        sound,
        pinched,
        lines,
        sensor,
        known);
  }

  /** The same with the criteria that are known for a pump, if there are such. */
  public GradingSettings withCriteriaOf(Optional<String> pump) {
    return pump.flatMap(pumps::of)
        .flatMap(KnownPump::criteria)
        .map(this::withCriteria)
        .orElse(this);
  }

  /** How lines are written that come over a port. */
  public LineFormat lineFormat() {
    return lines.<LineFormat>map(l -> l).orElse(LineFormat.PROTOCOL_1);
  }
}
