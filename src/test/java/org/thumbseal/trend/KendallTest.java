package org.thumbseal.trend;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Random;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.thumbseal.quantity.NormalDistribution;

class KendallTest {
  static final double[] DAYS = {0, 31, 59, 92, 120, 151, 181, 212, 243, 273, 304, 334};
  static final double[] RISING = {
    6.89, 7.49, 7.66, 7.46, 7.6, 7.46, 7.45, 7.58, 7.67, 8.37, 8.2, 8.37
  };
  static final double[] TIED = {7, 7, 8, 7, 8, 7, 7, 8, 8, 8, 8, 8};

  static Points points(double[] days, double[] values) {
    return Points.of(
        IntStream.range(0, days.length)
            .mapToObj(i -> new Reading(days[i], values[i], "s"))
            .toList());
  }

  private static Points inOrder(double... values) {
    return points(IntStream.range(0, values.length).asDoubleStream().toArray(), values);
  }

  /** The usual table of upper tails, P(S >= s) (Kendall, Rank Correlation Methods; from memory). */
  @ParameterizedTest
  @CsvSource({
    "4, 6, 0.042",
    "5, 8, 0.042",
    "5, 10, 0.0083",
    "6, 11, 0.028",
    "6, 15, 0.0014",
    "7, 13, 0.035",
    "7, 15, 0.015",
    "8, 16, 0.031",
    "8, 18, 0.016",
    "9, 18, 0.038",
    "9, 20, 0.022",
    "10, 21, 0.036",
    "10, 25, 0.014",
  })
  void smallSamplesAreThoseOfTheTable(int count, int s, double tail) {
    assertThat(new KendallDistribution().and(count).atLeast(s))
        .isCloseTo(tail, within(tail < 0.01 ? 0.00005 : 0.0005));
  }

  /** scipy 1.17.1, stats.kendalltau(method="exact"). */
  @Test
  void theExactProbabilityIsThatOfTheReferenceLibrary() {
    assertThat(Kendall.of(inOrder(3, 1, 2, 5, 4, 6, 8)).twoSided())
        .isCloseTo(0.03015873015873016, within(1e-14));
    assertThat(Kendall.of(inOrder(3, 1, 2, 5, 4, 6, 8, 10, 7, 9)).twoSided())
        .isCloseTo(0.002212852733686067, within(1e-14));
  }

  /**
   * scipy 1.17.1, stats.kendalltau(method="asymptotic"): it makes no correction for continuity, so
   * its z is that of S, ours that of S - 1. Its variance with ties has terms of the second order
   * that Gilbert 16.4 leaves out, which are 0 where only one of the two has ties.
   */
  @Test
  void theVarianceWithTiesIsThatOfTheReferenceLibrary() {
    assertThat(uncorrected(Kendall.of(points(DAYS, RISING))))
        .isCloseTo(0.01312710939157066, within(1e-12));
    assertThat(uncorrected(Kendall.of(points(DAYS, TIED))))
        .isCloseTo(0.042357062026854894, within(1e-12));
  }

  private static double uncorrected(Kendall kendall) {
    return 2
        * NormalDistribution.cumulative(-Math.abs(kendall.s()) / Math.sqrt(kendall.variance()));
  }

  /** Two sensors: every order of each, counted one by one. */
  @Test
  void severalSensorsAreThoseOfAllTheirOrders() {
    int[] counts = new int[40];
    int all = 0;
    for (List<Integer> a : orders(4)) {
      for (List<Integer> b : orders(3)) {
        counts[Math.max(0, score(a) + score(b))]++;
        all++;
      }
    }
    KendallDistribution both = new KendallDistribution().and(4).and(3);

    for (int s = 1; s <= 9; s++) {
      double tail = IntStream.range(s, 40).map(i -> counts[i]).sum() / (double) all;
      assertThat(both.atLeast(s)).as("S %d", s).isCloseTo(tail, within(1e-14));
    }
  }

  private static int score(List<Integer> order) {
    int s = 0;
    for (int j = 1; j < order.size(); j++) {
      for (int i = 0; i < j; i++) {
        s += order.get(j) > order.get(i) ? 1 : -1;
      }
    }
    return s;
  }

  static List<List<Integer>> orders(int count) {
    if (count == 0) {
      return List.of(List.of());
    }
    List<List<Integer>> all = new ArrayList<>();
    for (List<Integer> shorter : orders(count - 1)) {
      for (int at = 0; at < count; at++) {
        List<Integer> order = new ArrayList<>(shorter);
        order.add(at, count);
        all.add(order);
      }
    }
    return all;
  }

  @Test
  void oneSensorIsNeverComparedWithAnother() {
    List<Reading> readings = new ArrayList<>();
    for (int i = 0; i < 6; i++) {
      readings.add(new Reading(i, i < 3 ? 7 : 8, i < 3 ? "a" : "b"));
    }
    assertThat(Kendall.of(Points.of(readings)).s()).isZero();
  }

  @Test
  void theProbabilityIsTheSameBackwardsAndUpsideDown() {
    Random random = new Random(3);
    for (int trial = 0; trial < 50; trial++) {
      List<Double> values =
          new ArrayList<>(random.doubles(4 + random.nextInt(20)).boxed().toList());
      double p = Kendall.of(inOrder(column(values, 1))).twoSided();
      assertThat(Kendall.of(inOrder(column(values, -1))).twoSided()).isEqualTo(p);
      Collections.reverse(values);
      assertThat(Kendall.of(inOrder(column(values, 1))).twoSided()).isEqualTo(p);
    }
  }

  private static double[] column(List<Double> values, int sign) {
    return values.stream().mapToDouble(v -> sign * v).toArray();
  }
}
