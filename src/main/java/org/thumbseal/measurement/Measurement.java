package org.thumbseal.measurement;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.thumbseal.phase.TestWindow;

/**
 * The quantities of one occlusion test. What could not be measured is absent.
 *
 * @param occludedAt instant of the blocking, s from the first sample, device clock
 * @param openVacuum mean over the last (up to 2 s) of the open phase, kPa
 * @param riseLimit the rise that was timed, kPa
 * @param riseTime from the blocking to the first time the vacuum stands {@code riseLimit} above the
 *     open vacuum, s; absent where the thumb slipped
 * @param maximumVacuum highest 1 s mean while the inlet is blocked, kPa
 * @param highestRise how far the vacuum climbed above the open vacuum at most, kPa
 * @param exponential the plain exponential through the rise
 * @param pump what the rise says about the pump
 * @param decay the blocked jar left to itself, where it was
 * @param ambient barometric pressure, where it is known
 * @param phases the phases, in order
 * @param quality what the record says about itself
 * @param calibration of the sensor, as it was applied
 * @param startedAt instant at which somebody said that it begins, s from the first sample, device
 *     clock; absent where nobody did
 */
public record Measurement(
    Budgeted occludedAt,
    Budgeted openVacuum,
    double riseLimit,
    Optional<Budgeted> riseTime,
    Optional<Budgeted> maximumVacuum,
    double highestRise,
    Optional<Exponential> exponential,
    Optional<PumpEstimate> pump,
    Optional<Decay> decay,
    Optional<AmbientPressure> ambient,
    List<PhaseSpan> phases,
    Quality quality,
    SensorCalibration calibration,
    Optional<Double> startedAt)
    implements Observed {
  /** Keeps a copy of the phases. */
  public Measurement {
    phases = List.copyOf(phases);
  }

  @Override
  public Quality.Zero zero() {
    return quality.zero();
  }

  @Override
  public double noise() {
    return quality.noise();
  }

  @Override
  public Quality.Clock clock() {
    return quality.clock();
  }

  @Override
  public Map<String, Budgeted> budgeted() {
    Map<String, Budgeted> budgeted = new LinkedHashMap<>();
    budgeted.put("openVacuum", openVacuum);
    riseTime.ifPresent(q -> budgeted.put("riseTime", q));
    maximumVacuum.ifPresent(q -> budgeted.put("maximumVacuum", q));
    pump.ifPresent(p -> budgeted.putAll(p.budgeted()));
    decay.flatMap(Decay::decayRate).ifPresent(q -> budgeted.put("decayRate", q));
    decay.flatMap(Decay::leakRate).ifPresent(q -> budgeted.put("leakRate", q));
    return budgeted;
  }

  /** Measures the test in a window of the stream. */
  public static Measurement of(TestWindow window, Setup setup) {
    return new Measuring(Located.in(Recorded.of(window, setup.calibration()), setup.times()), setup)
        .measure();
  }
}
