package org.thumbseal.measurement;

import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.thumbseal.phase.UnblockedWindow;

/**
 * A start that no blocking followed in time: there is no test to measure.
 *
 * @param startedAt instant at which it was said, s from the first sample, device clock
 * @param openVacuum mean over the last 2 s, kPa; absent where it cannot be told from the zero
 * @param ambient barometric pressure, where it is known
 * @param phases idle and open as far as they were seen, in order
 * @param zero what the sensor reads at rest
 * @param noise standard deviation of the readings, kPa
 * @param clock the sensor's clock against the host's
 * @param calibration of the sensor, as it was applied
 */
public record Unblocked(
    Optional<Double> startedAt,
    Optional<Budgeted> openVacuum,
    Optional<AmbientPressure> ambient,
    List<PhaseSpan> phases,
    Quality.Zero zero,
    double noise,
    Quality.Clock clock,
    SensorCalibration calibration)
    implements Observed {
  /** Keeps a copy of the phases. */
  public Unblocked {
    phases = List.copyOf(phases);
  }

  @Override
  public Map<String, Budgeted> budgeted() {
    return openVacuum.map(q -> Map.of("openVacuum", q)).orElse(Map.of());
  }

  /** Whether the pump was seen to run at the end. */
  public boolean isPumpSeen() {
    return openVacuum.isPresent();
  }

  /** Looks at what there is. */
  public static Unblocked of(UnblockedWindow window, Setup setup) {
    return new UnblockedLook(window, setup).look();
  }
}
