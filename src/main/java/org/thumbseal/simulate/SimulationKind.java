package org.thumbseal.simulate;

import java.util.Arrays;
import java.util.Optional;

/** Ready-made recordings, by what is wrong with the pump, the person, the sensor or the line. */
public enum SimulationKind {
  SOUND("sound", "a sound pump and a clean test"),
  SLOW("slow", "climbs high enough, but takes more than 10 s for 65 kPa"),
  SLIPPED("slipped", "the thumb slips during the rise"),
  RELEASED_EARLY("released-early", "the inlet is opened before the limit is met"),
  NEVER_BLOCKED("never-blocked", "the pump runs with the inlet open and is switched off"),
  ALTITUDE("altitude", "a sound pump at 2000 to 3000 m"),
  LEAK("leak", "a hole in jar, lid or tube"),
  RESTRICTION("restriction", "a clogged filter between jar and pump"),
  WORN_PUMP("worn-pump", "leaking valves: slow, and not high enough"),
  CONTROL_NOT_AT_MAXIMUM("control-not-at-maximum", "the vacuum control holds at 70 to 76 kPa"),
  REDUCED_VOLUME("reduced-volume", "a jar half full: fast, and high enough"),
  BLOCKED_INLET("blocked-inlet", "10 to 30 kPa already with the inlet open"),
  NO_VACUUM("no-vacuum", "pulls 8 to 15 kPa only"),
  LATE("late", "the inlet is blocked after a long wait"),
  ALREADY_RUNNING("already-running", "the pump was on before the recording began"),
  OFF_WHILE_BLOCKED("off-while-blocked", "the pump is switched off with the inlet still blocked"),
  PINCHED_HOSE("pinched-hose", "a small leak; at the maximum the hose to the pump is pinched"),
  TWO_TESTS("two-tests", "two sound pumps one after another"),
  IDLE("idle", "hours with a pump that is only now and then switched on"),
  NOISY_LINE("noisy-line", "1 % of the lines lost or damaged"),
  GAP("gap", "the line is silent for 0.4 to 1.5 s during the rise"),
  RESTART("restart", "the sensor restarts during the rise"),
  RANGE_CLIPPED("range-clipped", "the range of the sensor ends below the maximum"),
  SENSOR_FAULT("sensor-fault", "the sensor reports a fault during the rise");

  private final String code;
  private final String description;

  SimulationKind(String code, String description) {
    this.code = code;
    this.description = description;
  }

  /** The name on the command line, such as {@code worn-pump}. */
  public String code() {
    return code;
  }

  /** What it shows, in a few words. */
  public String description() {
    return description;
  }

  /** The kind of a code. */
  public static Optional<SimulationKind> ofCode(String code) {
    return Arrays.stream(values()).filter(k -> k.code.equals(code)).findFirst();
  }
}
