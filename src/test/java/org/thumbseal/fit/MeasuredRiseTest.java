package org.thumbseal.fit;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.withinPercentage;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.thumbseal.capture.Columns;
import org.thumbseal.capture.TableReader;
import org.thumbseal.sample.StreamEvent.Sample;

class MeasuredRiseTest {
  private static final double OPEN = 1.63;
  private static final int FIRST_OF_THE_RISE = 4;

  /**
   * An actuator being inflated (fixtures/measured), against SciPy 1.17.1 curve_fit with the same
   * Jacobian: another program on the same points.
   */
  @Test
  void fitsAMeasuredRiseAsAnotherProgramDoes() throws Exception {
    FitResult fit =
        LeastSquares.fit(new ExponentialRise(OPEN), points(), new double[] {25, 1, 0})
            .result()
            .orElseThrow();
    assertThat(fit.degreesOfFreedom()).isEqualTo(192);
    close(fit.parameter(ExponentialRise.ASYMPTOTE), 29.4918656);
    close(fit.parameter(ExponentialRise.TAU), 0.711447519);
    close(fit.parameter(ExponentialRise.ONSET), -0.0284983105);
    close(fit.standardError(ExponentialRise.ASYMPTOTE), 0.0110129736);
    close(fit.standardError(ExponentialRise.TAU), 0.00172247819);
    close(fit.standardError(ExponentialRise.ONSET), 0.00106413673);
    close(fit.residualSumOfSquares(), 1.41819755);
    close(fit.lag1Autocorrelation(), 0.675342637);
    close(fit.correlation(ExponentialRise.ASYMPTOTE, ExponentialRise.TAU), 0.716078216);
  }

  private static void close(double actual, double expected) {
    assertThat(actual).isCloseTo(expected, withinPercentage(1e-5));
  }

  private static Points points() throws Exception {
    byte[] table = Files.readAllBytes(Path.of("fixtures/measured/softbot_sweep_kp_30.csv"));
    List<Sample> samples =
        TableReader.read(table, Columns.parse("time=Time:s,pressure=Pressure:kPa")).samples();
    List<Sample> rise = samples.subList(FIRST_OF_THE_RISE, samples.size());
    return Points.of(
        rise.stream().mapToDouble(Sample::seconds).toArray(),
        rise.stream().mapToDouble(s -> s.pascals() / 1_000).toArray());
  }
}
