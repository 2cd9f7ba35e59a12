package org.thumbseal.trend;

import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import org.thumbseal.quantity.NormalDistribution;

/**
 * The test of Mann (1945) and Kendall for a trend, over one sensor or several, each compared with
 * itself only (Hirsch, Slack and Smith 1982, who do so with seasons; Gilbert, Statistical Methods
 * for Environmental Pollution Monitoring, 1987, chapters 16 and 17).
 *
 * @param s pairs that rise less pairs that fall
 * @param pairs how many could be compared
 * @param variance of S by chance, with ties of value or day taken off (Gilbert 16.4 for values)
 * @param exact the exact distribution; absent where the normal one is used
 */
record Kendall(int s, int pairs, double variance, java.util.Optional<KendallDistribution> exact) {
  /** Up to here the exact distribution is used, where there are no ties. */
  static final int SMALL = 10;

  static Kendall of(Points points) {
    List<Points> sensors = points.bySensor();
    int s = sensors.stream().mapToInt(Kendall::score).sum();
    int pairs = sensors.stream().mapToInt(p -> p.size() * (p.size() - 1) / 2).sum();
    double variance = sensors.stream().mapToDouble(Kendall::variance).sum();
    double untied = sensors.stream().mapToDouble(p -> spread(p.size()) / 18).sum();
    boolean small = points.size() <= SMALL && Math.abs(variance - untied) < 1e-9;
    return new Kendall(
        s,
        pairs,
        variance,
        small ? java.util.Optional.of(exact(sensors)) : java.util.Optional.empty());
  }

  private static KendallDistribution exact(List<Points> sensors) {
    KendallDistribution all = new KendallDistribution();
    sensors.forEach(p -> all.and(p.size()));
    return all;
  }

  private static int score(Points points) {
    int s = 0;
    for (int j = 1; j < points.size(); j++) {
      for (int i = 0; i < j; i++) {
        double rise = (points.value(j) - points.value(i)) * (points.day(j) - points.day(i));
        s += (int) Math.signum(rise);
      }
    }
    return s;
  }

  private static double variance(Points points) {
    Map<Double, Integer> values = new TreeMap<>();
    Map<Double, Integer> days = new TreeMap<>();
    for (int i = 0; i < points.size(); i++) {
      values.merge(points.value(i), 1, Integer::sum);
      days.merge(points.day(i), 1, Integer::sum);
    }
    return (spread(points.size()) - ties(values) - ties(days)) / 18;
  }

  private static double ties(Map<Double, Integer> counts) {
    return counts.values().stream().mapToDouble(Kendall::spread).sum();
  }

  private static double spread(double n) {
    return n * (n - 1) * (2 * n + 5);
  }

  /** Probability that chance alone gives an S as far from 0, on either side. */
  double twoSided() {
    if (s == 0 || variance <= 0) {
      return 1;
    }
    int size = Math.abs(s);
    return exact
        .map(e -> Math.min(1, 2 * e.atLeast(size)))
        .orElseGet(() -> 2 * NormalDistribution.cumulative(-(size - 1) / Math.sqrt(variance)));
  }

  /**
   * C of the interval of the slope (Hollander and Wolfe, Nonparametric Statistical Methods, 9.4;
   * Gilbert 16.5): the interval leaves out (pairs - C)/2 slopes at either end.
   *
   * @param confidence two-sided, such as 0.95
   */
  double width(double confidence) {
    double outside = 1 - confidence;
    if (exact.isEmpty()) {
      return NormalDistribution.quantile(1 - outside / 2) * Math.sqrt(variance);
    }
    int critical = pairs;
    while (critical > 0 && 2 * exact.get().atLeast(critical) <= outside + 1e-12) {
      critical -= 2;
    }
    return critical;
  }
}
