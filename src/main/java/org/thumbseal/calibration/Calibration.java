package org.thumbseal.calibration;

import java.util.List;

/**
 * A sensor held against a reference gauge, and what came of it.
 *
 * @param id UUID, the same for the same calibration
 * @param facts when and how
 * @param points the pairs, in the order in which they were read
 * @param line through them
 */
public record Calibration(
    String id, CalibrationFacts facts, List<CalibrationPoint> points, CalibrationLine line) {
  /** Keeps a copy of the points. */
  public Calibration {
    points = List.copyOf(points);
  }

  /**
   * Fits the line and checks all that was said.
   *
   * @throws CalibrationRefused if anything of it is nonsense
   */
  public static Calibration of(String id, CalibrationFacts facts, List<CalibrationPoint> points)
      throws CalibrationRefused {
    facts.check();
    CalibrationLine line = CalibrationLine.through(points, facts.repeatability() / Math.sqrt(3));
    return new Calibration(id, facts, points, line);
  }

  /**
   * Refuses a single pair that cannot be right, before there are enough for a line.
   *
   * @throws CalibrationRefused with what is wrong
   */
  public static void check(CalibrationPoint point) throws CalibrationRefused {
    CalibrationLine.check(point);
  }

  /** The largest deviation of the readings as they were. */
  public AsFound asFound() {
    return AsFound.in(points);
  }
}
