package org.thumbseal.fit;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.Arrays;
import java.util.random.RandomGenerator;
import java.util.random.RandomGeneratorFactory;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import org.thumbseal.fit.FitOutcome.Reason;
import org.thumbseal.fit.FitOutcome.Refused;

class ExponentialRiseTest {
  private static final double OPEN = 0.3;
  private static final ExponentialRise RISE = new ExponentialRise(OPEN);

  @Test
  void standsAtTheOpenLevelAtTheOnsetAndAt63PercentOneTimeConstantLater() {
    double[] p = {90.3, 4, 8};
    assertThat(RISE.value(p, 8)).isEqualTo(OPEN);
    assertThat(RISE.value(p, 12)).isCloseTo(OPEN + 90 * 0.6321205588, within(1e-8));
  }

  @ParameterizedTest
  @ValueSource(doubles = {7.5, 8, 9.25, 14, 60})
  void derivativesAgreeWithCentralDifferences(double x) {
    double[] p = {90.3, 4, 8};
    double[] slopes = new double[3];
    RISE.gradient(p, x, slopes);
    for (int j = 0; j < 3; j++) {
      assertThat(slopes[j]).isCloseTo(difference(p, j, x), within(1e-6));
    }
  }

  @ParameterizedTest
  @CsvSource({"90, 4, 8", "72, 0.5, 0", "85, 40, 3600", "-28, 0.7, -2"})
  void findsTheParametersOfAnExactRise(double asymptote, double tau, double onset) {
    double[] truth = {asymptote, tau, onset};
    double[] start = {asymptote * 0.8, tau * 1.5, onset - 0.3 * tau};
    FitResult fit = fit(rise(truth, 0, 1), start);
    for (int j = 0; j < 3; j++) {
      assertThat(fit.parameter(j)).isCloseTo(truth[j], within(1e-8 * Math.abs(asymptote)));
    }
    assertThat(fit.rms()).isLessThan(1e-9);
  }

  /**
   * Standard errors say how far the parameters scatter: over many noisy rises the mean square of
   * error over standard error is 1. Its own standard deviation over 400 rises is sqrt(2/400) =
   * 0.07; the band is four of it.
   */
  @Test
  void standardErrorsMatchTheScatterOfTheParameters() {
    double[] truth = {90, 4, 8};
    double[] sum = new double[3];
    int rises = 400;
    for (int seed = 0; seed < rises; seed++) {
      FitResult fit = fit(rise(truth, 0.2, seed), new double[] {80, 3, 7});
      Arrays.setAll(sum, j -> sum[j] + squared(fit, j, truth[j]));
    }
    assertThat(sum)
        .satisfies(
            s ->
                assertThat(Arrays.stream(s).map(v -> v / rises))
                    .allSatisfy(v -> assertThat(v).isCloseTo(1, within(0.28))));
  }

  @Test
  void saysTheNoiseAndThatItIsWhite() {
    FitResult fit = fit(rise(new double[] {90, 4, 8}, 0.2, 7), new double[] {80, 3, 7});
    // 801 points: standard errors 0.005 kPa of the scatter, 0.035 of the autocorrelation
    assertThat(fit.residualStandardDeviation()).isCloseTo(0.2, within(0.02));
    assertThat(fit.lag1Autocorrelation()).isCloseTo(0, within(0.14));
    assertThat(fit.rms()).isLessThan(fit.residualStandardDeviation());
  }

  @Test
  void showsByTheAutocorrelationThatTheCurveHasAnotherShape() {
    double[] x = IntStream.rangeClosed(0, 800).mapToDouble(i -> 8 + i * 0.02).toArray();
    double[] straight = Arrays.stream(x).map(t -> Math.min(80, (t - 8) * 10)).toArray();
    FitResult fit = fit(Points.of(x, straight), new double[] {80, 3, 8});
    assertThat(fit.lag1Autocorrelation()).isGreaterThan(0.9);
  }

  @Test
  void refusesAsManyParametersAsPoints() {
    Points three = Points.of(new double[] {8, 9, 10}, new double[] {0, 20, 35});
    assertThat(LeastSquares.fit(RISE, three, new double[] {90, 4, 8}))
        .isEqualTo(new Refused(Reason.TOO_FEW_POINTS));
  }

  @Test
  void refusesALevelThatNeverRises() {
    double[] x = IntStream.range(0, 50).mapToDouble(i -> i).toArray();
    Points flat = Points.of(x, Arrays.stream(x).map(t -> OPEN).toArray());
    assertThat(LeastSquares.fit(RISE, flat, new double[] {90, 4, 8}).result()).isEmpty();
  }

  @Test
  void refusesAStartWithoutMeaningInsteadOfThrowing() {
    Points points = rise(new double[] {90, 4, 8}, 0.1, 3);
    assertThat(LeastSquares.fit(RISE, points, new double[] {90, -4, 8}).result()).isEmpty();
    assertThat(LeastSquares.fit(RISE, points, new double[] {90, 1e-9, 8}).result()).isEmpty();
  }

  @Test
  void takesStartValuesOfTheModelOnly() {
    Points points = rise(new double[] {90, 4, 8}, 0.1, 3);
    assertThatThrownBy(() -> LeastSquares.fit(RISE, points, new double[] {90, 4}))
        .isInstanceOf(IllegalArgumentException.class);
    assertThatThrownBy(() -> LeastSquares.fit(RISE, points, new double[] {90, Double.NaN, 8}))
        .isInstanceOf(IllegalArgumentException.class);
  }

  private static FitResult fit(Points points, double[] start) {
    return LeastSquares.fit(RISE, points, start).result().orElseThrow();
  }

  /** 801 points over four time constants from the onset on. */
  private static Points rise(double[] truth, double noise, long seed) {
    RandomGenerator random = RandomGeneratorFactory.of("L64X128MixRandom").create(seed);
    double[] x =
        IntStream.rangeClosed(0, 800).mapToDouble(i -> truth[2] + i * truth[1] / 200).toArray();
    double[] y =
        Arrays.stream(x).map(t -> RISE.value(truth, t) + noise * random.nextGaussian()).toArray();
    return Points.of(x, y);
  }

  private static double squared(FitResult fit, int j, double truth) {
    double error = (fit.parameter(j) - truth) / fit.standardError(j);
    return error * error;
  }

  private static double difference(double[] p, int j, double x) {
    double step = 1e-5;
    double[] up = p.clone();
    double[] down = p.clone();
    up[j] += step;
    down[j] -= step;
    return (RISE.value(up, x) - RISE.value(down, x)) / (2 * step);
  }
}
