package org.thumbseal.measurement;

import java.util.List;
import java.util.Map;
import java.util.Optional;

/** What a record shows after somebody began a test: the test, or that the inlet stayed open. */
public sealed interface Observed permits Measurement, Unblocked {
  /**
   * Instant at which somebody said that a test begins, s from the first sample, device clock;
   * absent where nobody did.
   */
  Optional<Double> startedAt();

  /** Barometric pressure, where it is known. */
  Optional<AmbientPressure> ambient();

  /** The phases, in order. */
  List<PhaseSpan> phases();

  /** Of the sensor, as it was applied. */
  SensorCalibration calibration();

  /** What the sensor reads at rest, and how that is known. */
  Quality.Zero zero();

  /** Standard deviation of the readings, kPa. */
  double noise();

  /** The sensor's clock against the host's. */
  Quality.Clock clock();

  /** The quantities that have a budget, by their names in result documents, in order. */
  Map<String, Budgeted> budgeted();
}
