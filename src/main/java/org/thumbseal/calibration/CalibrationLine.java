package org.thumbseal.calibration;

import java.util.Comparator;
import java.util.HashSet;
import java.util.List;
import org.thumbseal.measurement.Contribution;

/**
 * True vacuum = offset + gain times sensor vacuum, from pairs, and how well a test can rely on it.
 *
 * <p>A test takes the sensor's own zero z off while the pump is at rest, where the true vacuum is
 * nothing. What it grades is a difference: v = line(s) - line(z) = gain (s - z). The offset
 * cancels, and with it the uncertainty of the offset and any part of the reference's error that is
 * the same at all points; so an offset that has wandered since the calibration does no harm. What
 * stays:
 *
 * <ul>
 *   <li>the gain, from the scatter of the points: v / gain times u(gain);
 *   <li>the reference: its error at one end of the calibrated span against that at the other, both
 *       as uncertain as its certificate says, tilt the line by up to sqrt(2) u / span. More points
 *       read on the same gauge do not average that out, so their number plays no part;
 *   <li>non-linearity: what the true curve departs from the line at s less what it does at z.
 *       Within the span it is as large as the residuals, once for s and once for z, and at least
 *       what is usual where there are fewer than five points. A bow h (1 - x^2) over the span gives
 *       its size near the zero, where it goes to nothing, and beyond the span, where it grows with
 *       the square;
 *   <li>drift since, which no pair can tell: see {@link AppliedCalibration}.
 * </ul>
 *
 * @param line reference vacuum against sensor vacuum, both kPa
 * @param lowest lowest reference vacuum, kPa
 * @param highest highest reference vacuum, kPa
 */
public record CalibrationLine(StraightLine line, double lowest, double highest) {
  /** Less between the lowest and the highest point says too little of the gain, kPa. */
  static final double SHORTEST_SPAN = 30;

  /** +-0.25 % of the span, rectangular: bow of a low-cost silicon sensor (common practice). */
  private static final double USUAL_BOW = 0.0025 / Math.sqrt(3);

  /** Fewer points show too little of a bow. */
  private static final int ENOUGH_FOR_A_BOW = 5;

  private static final double LOWEST_GAIN = 0.8;
  private static final double HIGHEST_GAIN = 1.25;
  private static final double HIGHEST_VACUUM = 101.325;
  private static final double HIGHEST_READING = 200;

  /** A pair further off the line contradicts the others, kPa. */
  private static final double CONTRADICTION = 2;

  /**
   * Fits the line.
   *
   * @param repeatability standard deviation of a pair that was read with care, kPa
   * @throws CalibrationRefused if the pairs are nonsense
   */
  static CalibrationLine through(List<CalibrationPoint> points, double repeatability)
      throws CalibrationRefused {
    for (CalibrationPoint point : points) {
      check(point);
    }
    checkDistinct(points);
    double lowest = points.stream().mapToDouble(CalibrationPoint::reference).min().orElseThrow();
    double highest = points.stream().mapToDouble(CalibrationPoint::reference).max().orElseThrow();
    if (highest - lowest < SHORTEST_SPAN) {
      throw new CalibrationRefused(
          "the reference readings span %.1f kPa, from %.1f to %.1f kPa; a line needs %.0f kPa or"
              + " more: take one point open to the air and one as high as the pump goes",
          highest - lowest, lowest, highest, SHORTEST_SPAN);
    }
    StraightLine line = StraightLine.through(points, repeatability);
    checkSlope(line.slope());
    checkAgreement(points, line);
    return new CalibrationLine(line, lowest, highest);
  }

  /** Refuses a pair that cannot be one of vacuum readings. */
  static void check(CalibrationPoint point) throws CalibrationRefused {
    if (!(point.reference() >= 0 && point.reference() <= HIGHEST_VACUUM)) {
      throw new CalibrationRefused(
          "the reference reads a vacuum from 0 to 101.325 kPa, not %.1f kPa: leave a minus sign out,"
              + " and write the unit if it is not kPa",
          point.reference());
    }
    if (!(Math.abs(point.sensor()) <= HIGHEST_READING)) {
      throw new CalibrationRefused("no sensor reads a vacuum of %.1f kPa", point.sensor());
    }
  }

  private static void checkDistinct(List<CalibrationPoint> points) throws CalibrationRefused {
    long distinct = points.stream().mapToDouble(CalibrationPoint::sensor).distinct().count();
    if (distinct < 2) {
      throw new CalibrationRefused(
          "a line needs two different points or more, and there %s: take one open to the air and"
              + " one as high as the pump goes",
          distinct == 1 ? "is one" : "is none");
    }
    HashSet<CalibrationPoint> seen = new HashSet<>();
    for (CalibrationPoint point : points) {
      if (!seen.add(point)) {
        throw new CalibrationRefused(
            "the pair %s=%s is there twice; a second reading at the same vacuum is a reading anew",
            point.sensor(), point.reference());
      }
    }
  }

  private static void checkSlope(double slope) throws CalibrationRefused {
    if (!(slope > 0)) {
      throw new CalibrationRefused(
          "the sensor falls where the reference rises: write both as vacuum, which is 0 in the open"
              + " air and grows as the pump pulls, the sensor first");
    }
    if (!(slope >= LOWEST_GAIN && slope <= HIGHEST_GAIN)) {
      throw new CalibrationRefused(
          "the reference rises %.3f times as fast as the sensor, which no sensor in order is off by"
              + " (%.2f to %.2f): is a unit wrong, or a pair mistyped?",
          slope, LOWEST_GAIN, HIGHEST_GAIN);
    }
  }

  private static void checkAgreement(List<CalibrationPoint> points, StraightLine line)
      throws CalibrationRefused {
    CalibrationPoint worst =
        points.stream().max(Comparator.comparingDouble(p -> distance(p, line))).orElseThrow();
    if (distance(worst, line) > CONTRADICTION) {
      throw new CalibrationRefused(
          "the pairs contradict each other: %s=%s lies %.1f kPa off the line through them; read"
              + " it again, when both stand still",
          worst.sensor(), worst.reference(), distance(worst, line));
    }
  }

  private static double distance(CalibrationPoint point, StraightLine line) {
    return Math.abs(point.reference() - line.at(point.sensor()));
  }

  /** True vacuum for one kPa of the sensor's. */
  public double gain() {
    return line.slope();
  }

  /** True vacuum where the sensor reads 0, kPa; no result rests on it. */
  public double offset() {
    return line.at(0);
  }

  /** From the lowest to the highest reference vacuum, kPa. */
  double span() {
    return highest - lowest;
  }

  /** Whether a true vacuum lies outside what was calibrated, kPa. */
  public boolean isBeyond(double kilopascals) {
    return kilopascals > highest + 0.02 * span();
  }

  /** The errors of a corrected difference to the zero, in kPa, but for drift. */
  List<Contribution> errors(double kilopascals, ReferenceGauge reference) {
    double size = Math.abs(kilopascals);
    return List.of(
        new Contribution(
            "calibration-line",
            size / gain() * Math.sqrt(line.slopeVariance()),
            "gain of the line through " + line.count() + " points"),
        new Contribution(
            "calibration-reference",
            size * Math.sqrt(2) * reference.standardUncertainty() / span(),
            "reference " + reference.name() + ", certificate " + reference.certificate()),
        new Contribution(
            "calibration-linearity", bow() * reach(size), linearitySource(kilopascals)));
  }

  private String linearitySource(double kilopascals) {
    String how =
        line.count() >= ENOUGH_FOR_A_BOW
            ? "residuals of the line"
            : "residuals of the line, at least +-0.25 % of its span, rectangular";
    return isBeyond(kilopascals) ? how + ", continued beyond its last point" : how;
  }

  /** Standard uncertainty of what the curve departs from the line at s less that at z, kPa. */
  private double bow() {
    return line.count() >= ENOUGH_FOR_A_BOW
        ? Math.sqrt(2) * line.scatter()
        : Math.max(Math.sqrt(2) * line.residual(), USUAL_BOW * span());
  }

  /** How much of the bow a difference to the zero has: 1 within the span. */
  private double reach(double kilopascals) {
    double atZero = Math.min(1, 4 * kilopascals / span());
    return Math.max(atZero, Math.abs(parabola(kilopascals) - parabola(0)));
  }

  /** 0 at both ends of the span, 1 in its middle. */
  private double parabola(double kilopascals) {
    return 4 * (kilopascals - lowest) * (highest - kilopascals) / (span() * span());
  }
}
