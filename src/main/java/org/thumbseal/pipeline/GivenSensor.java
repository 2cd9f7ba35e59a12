package org.thumbseal.pipeline;

import java.util.Optional;
import org.thumbseal.calibration.Calibrations;
import org.thumbseal.wire.LineFormat;
import org.thumbseal.wire.PlainLines;

/**
 * What is known of the sensor, beside what it sends.
 *
 * @param calibrations of sensors; a test takes the one that was there when it began
 * @param lines how the lines of a sensor are written that does not speak the wire protocol
 * @param id of a sensor that does not say who it is
 */
public record GivenSensor(
    Calibrations calibrations, Optional<PlainLines> lines, Optional<String> id) {
  /** Nothing said: it speaks the wire protocol, and says who it is. */
  public static final GivenSensor NONE =
      new GivenSensor(Calibrations.NONE, Optional.empty(), Optional.empty());

  /** The same with these calibrations. */
  public GivenSensor withCalibrations(Calibrations known) {
    return new GivenSensor(known, lines, id);
  }

  /**
   * The same for one that says little about itself.
   *
   * @param format how it writes its lines; empty for the wire protocol
   * @param sensor its id, where the user knows it
   */
  public GivenSensor withLines(Optional<PlainLines> format, Optional<String> sensor) {
    return new GivenSensor(calibrations, format, sensor);
  }

  /** How lines are written that come over a port. */
  public LineFormat lineFormat() {
    return lines.<LineFormat>map(l -> l).orElse(LineFormat.PROTOCOL_1);
  }

  /** Of it only what no header of a record holds. */
  GivenSensor besidesHeader() {
    return NONE.withCalibrations(calibrations);
  }
}
