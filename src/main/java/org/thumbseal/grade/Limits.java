package org.thumbseal.grade;

import java.util.Optional;
import org.thumbseal.grade.Criteria.AltitudeRule;
import org.thumbseal.measurement.AmbientPressure;

/**
 * The limits of vacuum as they apply at the place of the test.
 *
 * <p>What is free of altitude is the ratio of vacuum to ambient pressure: a pump's ultimate
 * pressure is proportional to the ambient one, and the time to reach a ratio does not change. What
 * the tested sensor itself reads at rest adjusts nothing: its error would lower the limit along
 * with the reading.
 *
 * @param riseKilopascals kPa
 * @param maximumKilopascals kPa
 * @param factor what they were multiplied by; 1 where they stand as set
 */
public record Limits(double riseKilopascals, double maximumKilopascals, double factor) {
  /** Limits are scaled below this ambient pressure, kPa. */
  public static final double LOW_AMBIENT = 98;

  private static final double STANDARD = 101.325;

  /** The limits at an ambient pressure. */
  public static Limits of(Criteria criteria, Optional<AmbientPressure> ambient) {
    double factor =
        ambient
            .filter(a -> a.origin() != AmbientPressure.Origin.AT_REST)
            .map(AmbientPressure::kilopascals)
            .filter(p -> p < LOW_AMBIENT && criteria.altitudeRule() == AltitudeRule.SCALE)
            .map(p -> p / STANDARD)
            .orElse(1.0);
    return new Limits(
        criteria.riseKilopascals() * factor, criteria.maximumKilopascals() * factor, factor);
  }

  /** Whether the limits are not those that were set. */
  public boolean isAdjusted() {
    return factor < 1;
  }
}
