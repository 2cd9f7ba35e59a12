package org.thumbseal.spares;

import java.util.Optional;
import org.hipparchus.distribution.continuous.GammaDistribution;
import org.hipparchus.special.Beta;

/**
 * Use to come from use that was counted, taken as a Poisson process: parts fail one by one, at the
 * same rate all the time.
 *
 * @param uses how many in those days, 0 or more
 * @param days over which they were counted, 1 or more
 */
public record CountedDemand(int uses, int days) implements Demand {
  private static final double TAIL = 0.025;

  /** Checks the numbers. */
  public CountedDemand {
    if (uses < 0 || days < 1) {
      throw new IllegalArgumentException(uses + " uses in " + days + " days");
    }
  }

  /**
   * Exact interval of the mean of a Poisson distribution from one count, 95 % (Garwood 1936,
   * Biometrika 28, 437-442): half the 2.5 % quantile of chi-square with 2n degrees of freedom, half
   * the 97.5 % one with 2n + 2. Half a chi-square with 2k degrees is a gamma of shape k.
   */
  static Interval garwood(int count) {
    double low = count == 0 ? 0 : gamma(count, TAIL);
    return new Interval(low, gamma(count + 1, 1 - TAIL));
  }

  private static double gamma(int shape, double probability) {
    return new GammaDistribution(shape, 1).inverseCumulativeProbability(probability);
  }

  @Override
  public double perMonth() {
    return uses * MONTH / days;
  }

  @Override
  public Optional<Interval> interval() {
    Interval mean = garwood(uses);
    return Optional.of(new Interval(mean.low() * MONTH / days, mean.high() * MONTH / days));
  }

  /**
   * The exact upper prediction limit of a Poisson count from an earlier one: of all uses, earlier
   * and to come, each falls into the earlier days with probability p = earlier / (earlier + later),
   * whatever the rate, so that the later ones before the (n + 1)th earlier one are negative
   * binomial with n + 1 and p. The same follows from the gamma whose quantile is the upper limit of
   * Garwood. It holds with at least the probability asked for, whatever the true rate
   * (CountedDemandTest tries it).
   */
  @Override
  public int atMost(int ahead, double probability) {
    if (ahead == 0) {
      return 0;
    }
    int high = 1;
    while (cumulative(high, ahead) < probability) {
      high *= 2;
    }
    int low = -1;
    while (high - low > 1) {
      int middle = low + (high - low) / 2;
      if (cumulative(middle, ahead) < probability) {
        low = middle;
      } else {
        high = middle;
      }
    }
    return high;
  }

  /** Probability of at most so many uses. */
  double cumulative(int most, int ahead) {
    return Beta.regularizedBeta(days / ((double) days + ahead), uses + 1.0, most + 1.0);
  }
}
