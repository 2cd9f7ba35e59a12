package org.thumbseal.grade;

import org.thumbseal.measurement.Measurement;

/** How well a rise that was not reached is known: as well as the maximum it is part of. */
final class Shortfall {
  private static final double WITHOUT_MAXIMUM = 0.025;

  private Shortfall() {}

  /** Standard uncertainty of the highest rise as a share of it. */
  static double relativeUncertainty(Measurement measurement) {
    return measurement
        .maximumVacuum()
        .filter(m -> m.value() > 1)
        .map(m -> m.standardUncertainty() / m.value())
        .orElse(WITHOUT_MAXIMUM);
  }
}
