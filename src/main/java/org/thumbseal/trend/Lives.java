package org.thumbseal.trend;

import java.util.List;
import java.util.Optional;
import java.util.stream.IntStream;

/**
 * The lives of a pump between jumps. Those that are over have shown how far its values scatter
 * about a straight line, so that three visits of the present one can tell a trend that they could
 * not tell from themselves: lines side by side with one variance, as in the analysis of covariance
 * (G. W. Snedecor, W. G. Cochran, Statistical Methods; from memory). Only a pump that has gone the
 * same way in a life before is judged so early.
 *
 * @param over the lives before the last jump, each reconciled
 * @param now the present one, reconciled
 */
record Lives(List<Points> over, Points now) {
  private static final int LEAST_TESTS = 3;

  /** Three monthly visits, the first of them up to a month after the repair. */
  private static final double LEAST_DAYS = 45;

  /** So few degrees of freedom make any interval useless. */
  private static final int LEAST_FREEDOM = 2;

  /** Asked after the third, fourth and fifth visit of a life, each with its share of the error. */
  private static final int LOOKS = 3;

  /** The trend of the present life, where it stands out of the scatter of those before. */
  Optional<TrendLine> line(TrendRules rules) {
    int freedom = over.stream().mapToInt(Lives::freedom).sum();
    if (now.size() < LEAST_TESTS || now.span() < LEAST_DAYS || freedom < LEAST_FREEDOM) {
      return Optional.empty();
    }
    double scatter = Math.sqrt(over.stream().mapToDouble(Lives::squares).sum() / freedom);
    double error = scatter / Math.sqrt(spread(now));
    double slope = slope(now);
    StudentDistribution student = new StudentDistribution(freedom);
    double chance = Math.min(1, LOOKS * (1 - student.within(slope / error)));
    boolean before =
        over.stream()
            .filter(life -> freedom(life) > 0 && slope(life) * slope > 0)
            .mapToDouble(life -> slope(life) / (scatter / Math.sqrt(spread(life))))
            .anyMatch(ratio -> student.within(ratio) >= rules.confidence());
    if (!before || !(chance <= 1 - rules.confidence())) {
      return Optional.empty();
    }
    double reach = error * student.quantile(rules.confidence());
    TrendLine.Slope ends = new TrendLine.Slope(slope, slope - reach, slope + reach);
    return Optional.of(TrendLine.through(now.levelled(slope), ends, scatter, chance));
  }

  /** A slope and the level of each sensor are fitted. */
  private static int freedom(Points life) {
    return Math.max(0, life.size() - life.bySensor().size() - 1);
  }

  private static double squares(Points life) {
    double slope = freedom(life) == 0 ? 0 : slope(life);
    return freedom(life) == 0
        ? 0
        : life.bySensor().stream().mapToDouble(sensor -> squares(sensor, slope)).sum();
  }

  private static double squares(Points points, double slope) {
    double[] left =
        IntStream.range(0, points.size())
            .mapToDouble(i -> points.value(i) - slope * points.day(i))
            .toArray();
    double level = IntStream.range(0, left.length).mapToDouble(i -> left[i]).average().orElse(0);
    return IntStream.range(0, left.length).mapToDouble(i -> square(left[i] - level)).sum();
  }

  /** Least squares within each sensor: of three values a median slope would be no better. */
  private static double slope(Points points) {
    double product = 0;
    for (Points sensor : points.bySensor()) {
      double middle = sensor.meanDay();
      product +=
          IntStream.range(0, sensor.size())
              .mapToDouble(i -> (sensor.day(i) - middle) * sensor.value(i))
              .sum();
    }
    return product / spread(points);
  }

  /** Squares of the days about their mean, within each sensor. */
  private static double spread(Points points) {
    double sum = 0;
    for (Points sensor : points.bySensor()) {
      double middle = sensor.meanDay();
      sum +=
          IntStream.range(0, sensor.size()).mapToDouble(i -> square(sensor.day(i) - middle)).sum();
    }
    return sum;
  }

  private static double square(double value) {
    return value * value;
  }
}
