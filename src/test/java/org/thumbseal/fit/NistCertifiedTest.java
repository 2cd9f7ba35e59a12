package org.thumbseal.fit;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static org.assertj.core.api.Assertions.withinPercentage;

import java.io.IOException;
import org.assertj.core.data.Percentage;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/**
 * Certified values of the NIST Statistical Reference Datasets, read from the data files themselves
 * (fixtures/nist): y = b1 (1 - exp(-b2 x)).
 */
class NistCertifiedTest {
  /** Nine digits; the files certify eleven. */
  private static final Percentage NINE_DIGITS = withinPercentage(5e-8);

  @ParameterizedTest
  @CsvSource({"Misra1a, 1", "Misra1a, 2", "BoxBOD, 1", "BoxBOD, 2"})
  void reachesTheCertifiedValues(String name, int start) throws IOException {
    NistDataset nist = NistDataset.named(name);
    FitResult fit =
        LeastSquares.fit(new Saturation(), nist.points(), nist.start(start)).result().orElseThrow();
    for (int i = 0; i < 2; i++) {
      assertThat(fit.parameter(i)).isCloseTo(nist.certifiedParameters()[i], NINE_DIGITS);
      assertThat(fit.standardError(i))
          .isCloseTo(nist.certifiedStandardDeviations()[i], NINE_DIGITS);
    }
    assertThat(fit.residualSumOfSquares())
        .isCloseTo(nist.certified("Residual Sum of Squares"), NINE_DIGITS);
    assertThat(fit.residualStandardDeviation())
        .isCloseTo(nist.certified("Residual Standard Deviation"), NINE_DIGITS);
    assertThat(fit.degreesOfFreedom()).isEqualTo((int) nist.certified("Degrees of Freedom"));
    assertThat(fit.size()).isEqualTo((int) nist.certified("Number of Observations"));
  }

  /** Correlations are not certified; computed once with 40 digits by Newton's method. */
  @ParameterizedTest
  @CsvSource({"Misra1a, -0.998776192, 5e-10", "BoxBOD, -0.7298455621, 5e-11"})
  void correlatesTheParameters(String name, double correlation, double half) throws IOException {
    NistDataset nist = NistDataset.named(name);
    FitResult fit =
        LeastSquares.fit(new Saturation(), nist.points(), nist.start(2)).result().orElseThrow();
    assertThat(fit.correlation(0, 1)).isCloseTo(correlation, within(half));
    assertThat(fit.correlation(1, 0)).isEqualTo(fit.correlation(0, 1));
    assertThat(fit.correlation(1, 1)).isEqualTo(1);
  }

  /** NIST StRD Misra1b: the points of Misra1a, certified values as in its own data file. */
  @ParameterizedTest
  @CsvSource({"500, 0.0001", "300, 0.0002"})
  void reachesTheCertifiedValuesOfMisra1b(double b1, double b2) throws IOException {
    Points points = NistDataset.named("Misra1a").points();
    FitResult fit =
        LeastSquares.fit(new SecondOrder(), points, new double[] {b1, b2}).result().orElseThrow();
    assertThat(fit.parameter(0)).isCloseTo(3.3799746163E+02, NINE_DIGITS);
    assertThat(fit.standardError(0)).isCloseTo(3.1643950207E+00, NINE_DIGITS);
    assertThat(fit.parameter(1)).isCloseTo(3.9039091287E-04, NINE_DIGITS);
    assertThat(fit.standardError(1)).isCloseTo(4.2547321834E-06, NINE_DIGITS);
    assertThat(fit.residualSumOfSquares()).isCloseTo(7.5464681533E-02, NINE_DIGITS);
    assertThat(fit.residualStandardDeviation()).isCloseTo(7.9301471998E-02, NINE_DIGITS);
  }

  /** b1 (1 - (1 + b2 x/2)^-2). */
  private record SecondOrder() implements CurveModel {
    @Override
    public int parameterCount() {
      return 2;
    }

    @Override
    public double value(double[] b, double x) {
      double base = 1 + b[1] * x / 2;
      return b[0] * (1 - 1 / (base * base));
    }

    @Override
    public void gradient(double[] b, double x, double[] out) {
      double base = 1 + b[1] * x / 2;
      out[0] = 1 - 1 / (base * base);
      out[1] = b[0] * x / (base * base * base);
    }
  }

  /** b1 (1 - exp(-b2 x)). */
  private record Saturation() implements CurveModel {
    @Override
    public int parameterCount() {
      return 2;
    }

    @Override
    public double value(double[] b, double x) {
      return b[0] * (1 - StrictMath.exp(-b[1] * x));
    }

    @Override
    public void gradient(double[] b, double x, double[] out) {
      double remaining = StrictMath.exp(-b[1] * x);
      out[0] = 1 - remaining;
      out[1] = b[0] * x * remaining;
    }
  }
}
