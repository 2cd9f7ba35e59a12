package org.thumbseal.spares;

import java.util.Optional;
import org.hipparchus.special.Gamma;

/**
 * Use to come as a person estimates it: Poisson with that mean, which is taken as known.
 *
 * @param perMonth pieces a month, 0 or more
 */
public record SaidDemand(double perMonth) implements Demand {
  @Override
  public Optional<Interval> interval() {
    return Optional.empty();
  }

  @Override
  public int atMost(int days, double probability) {
    double mean = perMonth * days / MONTH;
    if (mean == 0) {
      return 0;
    }
    int most = (int) Math.max(0, mean - 12 * Math.sqrt(mean));
    while (Gamma.regularizedGammaQ(most + 1.0, mean) < probability) {
      most++;
    }
    return most;
  }
}
