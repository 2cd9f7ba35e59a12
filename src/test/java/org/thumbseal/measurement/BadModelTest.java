package org.thumbseal.measurement;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.thumbseal.capture.Columns;
import org.thumbseal.capture.TableReader;
import org.thumbseal.sample.StreamEvent.Sample;

/**
 * Compressed air let out of a chamber (fixtures/measured/evazillen_Ultimaker_020.csv): measured,
 * and no single exponential, since the flow is choked at first and turbulent, then laminar.
 */
class BadModelTest {
  private static final Path TABLE = Path.of("fixtures/measured/evazillen_Ultimaker_020.csv");

  /** The pressure counts as a vacuum that rises to nothing. */
  private static Curve chamber() throws Exception {
    List<Sample> samples =
        TableReader.read(Files.readAllBytes(TABLE), Columns.parse("time=1:us,pressure=3:bar"))
            .samples();
    return Curve.of(
        samples.stream().mapToDouble(Sample::seconds).toArray(),
        samples.stream().mapToDouble(s -> -s.pascals() / 1_000).toArray());
  }

  private static Exponential fit(Curve part) {
    double noise = Spikes.noise(part.between(part.lastTime() - 5, part.lastTime()));
    Exponential.Rise rise =
        new Exponential.Rise(part, part.level(0), part.level(part.size() - 1), noise);
    return Exponential.of(rise, part.firstTime()).orElseThrow();
  }

  /** From the valve on, from its middle on, and the long tail. */
  @ParameterizedTest
  @CsvSource({"5.2, 60", "5.2, 140", "8, 60", "12, 70", "20, 100"})
  void aMeasuredDecayOfManyTimeConstantsIsFlagged(double from, double to) throws Exception {
    assertThat(fit(chamber().between(from, to)).distrust()).isPresent();
  }

  /** Thinned out, neighbours are far apart; the order of the signs still tells. */
  @ParameterizedTest
  @CsvSource({"0.5", "1"})
  void soItIsWithFewPoints(double bins) throws Exception {
    assertThat(fit(chamber().between(5.2, 60).binned(bins)).distrust()).isPresent();
  }

  /** The same times and noise, but one exponential: trusted. */
  @Test
  void oneExponentialIsNot() throws IOException {
    Curve one = Drawn.noisy(50, 10, t -> -760 * Math.exp(-t / 7), 0.5, 7);
    assertThat(fit(one).distrust()).isEmpty();
    assertThat(fit(one).timeConstant().value()).isBetween(6.98, 7.02);
  }
}
