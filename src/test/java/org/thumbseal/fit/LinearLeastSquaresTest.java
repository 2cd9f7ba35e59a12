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
import org.junit.jupiter.params.provider.ValueSource;
import org.thumbseal.fit.FitOutcome.Reason;
import org.thumbseal.fit.FitOutcome.Refused;

class LinearLeastSquaresTest {

  /**
   * The thermometer of JCGM 100:2008 (GUM) H.3, readings from memory: correction b against reading
   * t, line about t0 = 20 degC. The published results are given to the digits compared here.
   */
  @Test
  void drawsTheCalibrationLineOfGumH3() {
    double[] t = {
      21.521, 22.012, 22.512, 23.003, 23.507, 23.999, 24.513, 25.002, 25.503, 26.010, 26.511
    };
    double[] b = {-.171, -.169, -.166, -.159, -.164, -.165, -.156, -.157, -.159, -.161, -.160};
    FitResult line = LinearLeastSquares.polynomial(Points.of(t, b), 1, 20).result().orElseThrow();
    assertThat(line.parameter(0)).isCloseTo(-0.1712, within(0.00005));
    assertThat(line.standardError(0)).isCloseTo(0.0029, within(0.00005));
    assertThat(line.parameter(1)).isCloseTo(0.00218, within(0.000005));
    assertThat(line.standardError(1)).isCloseTo(0.00067, within(0.000005));
    assertThat(line.correlation(0, 1)).isCloseTo(-0.930, within(0.0005));
    assertThat(line.residualStandardDeviation()).isCloseTo(0.0035, within(0.00005));
  }

  /** H.3.4: the correction predicted at 30 degC is -0.1494 with u = 0.0041. */
  @Test
  void predictsTheCorrectionOfGumH3At30Degrees() {
    double[] t = {
      21.521, 22.012, 22.512, 23.003, 23.507, 23.999, 24.513, 25.002, 25.503, 26.010, 26.511
    };
    double[] b = {-.171, -.169, -.166, -.159, -.164, -.165, -.156, -.157, -.159, -.161, -.160};
    FitResult line = LinearLeastSquares.polynomial(Points.of(t, b), 1, 30).result().orElseThrow();
    assertThat(line.parameter(0)).isCloseTo(-0.1494, within(0.00005));
    assertThat(line.standardError(0)).isCloseTo(0.0041, within(0.00005));
  }

  @ParameterizedTest
  @ValueSource(ints = {0, 1, 2, 3})
  void findsTheCoefficientsOfAnExactPolynomialFarFromZero(int degree) {
    double[] coefficients = {3, -2, 0.5, 4};
    double centre = 36_000;
    Points points = sampled(degree, coefficients, centre);
    FitResult fit = LinearLeastSquares.polynomial(points, degree, centre).result().orElseThrow();
    for (int k = 0; k <= degree; k++) {
      assertThat(fit.parameter(k)).isCloseTo(coefficients[k], within(1e-9));
    }
  }

  @Test
  void refusesWhatThePointsDoNotDetermine() {
    Points two = Points.of(new double[] {1, 2}, new double[] {1, 2});
    assertThat(LinearLeastSquares.polynomial(two, 1, 0))
        .isEqualTo(new Refused(Reason.TOO_FEW_POINTS));
    Points oneAbscissa = Points.of(new double[] {1, 1, 1}, new double[] {1, 2, 3});
    assertThat(LinearLeastSquares.polynomial(oneAbscissa, 1, 0))
        .isEqualTo(new Refused(Reason.UNDETERMINED));
  }

  @Test
  void knowsDegrees0To3() {
    Points points = Points.of(new double[] {1, 2, 3}, new double[] {1, 2, 3});
    assertThatThrownBy(() -> LinearLeastSquares.polynomial(points, 4, 0))
        .isInstanceOf(IllegalArgumentException.class);
    assertThatThrownBy(() -> LinearLeastSquares.polynomial(points, -1, 0))
        .isInstanceOf(IllegalArgumentException.class);
  }

  @ParameterizedTest
  @ValueSource(ints = {0, 7, 10, 20})
  void robustFitDoesNotSeeASingleSpikeAnywhere(int position) {
    double[] y = noisyLine();
    FitResult clean =
        LinearLeastSquares.robustPolynomial(Points.of(X, y), 1, 0.1).result().orElseThrow();
    y[position] += 25;
    FitResult spiked =
        LinearLeastSquares.robustPolynomial(Points.of(X, y), 1, 0.1).result().orElseThrow();
    assertThat(spiked.size()).isEqualTo(clean.size() - 1);
    assertThat(spiked.parameter(0))
        .isCloseTo(clean.parameter(0), within(3 * clean.standardError(0)));
    assertThat(spiked.residualStandardDeviation()).isLessThan(0.1);
  }

  @Test
  void robustFitOfPlainNoiseIsThePlainFit() {
    Points points = Points.of(X, noisyLine());
    FitResult robust = LinearLeastSquares.robustPolynomial(points, 1, 0).result().orElseThrow();
    FitResult plain = LinearLeastSquares.polynomial(points, 1, 0).result().orElseThrow();
    assertThat(robust.parameters()).isEqualTo(plain.parameters());
  }

  @Test
  void aCoarseSensorTogglingByOneStepHasNoSpikes() {
    double[] y = new double[X.length];
    y[4] = 0.71;
    y[13] = 0.71;
    y[16] = 20;
    FitResult fit =
        LinearLeastSquares.robustPolynomial(Points.of(X, y), 0, 0).result().orElseThrow();
    assertThat(fit.size()).isEqualTo(X.length - 1);
    assertThat(fit.parameter(0)).isCloseTo(2 * 0.71 / 20, within(1e-12));
  }

  private static final double[] X = IntStream.range(0, 21).mapToDouble(i -> i * 0.01).toArray();

  private static double[] noisyLine() {
    RandomGenerator random = RandomGeneratorFactory.of("L64X128MixRandom").create(5);
    return Arrays.stream(X).map(x -> 3 + 10 * x + 0.05 * random.nextGaussian()).toArray();
  }

  private static Points sampled(int degree, double[] coefficients, double centre) {
    double[] x = IntStream.range(0, 21).mapToDouble(i -> centre + (i - 10) * 0.1).toArray();
    Polynomial polynomial = new Polynomial(degree, centre);
    return Points.of(x, Arrays.stream(x).map(t -> polynomial.value(coefficients, t)).toArray());
  }
}
