package org.thumbseal.measurement;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** What is left out as a disturbance, what counts as a slip, and how fast a curve ends. */
class SpikesAndSlipsTest {
  private static double rise(double t) {
    return 90 * (1 - Math.exp(-t / 6));
  }

  @Test
  void singleSamplesFarOffAreLeftOut() {
    Curve clean = Drawn.noisy(20, 100, SpikesAndSlipsTest::rise, 0.1, 5);
    Curve spiked =
        Drawn.noisy(20, 100, t -> rise(t) + (Math.round(100 * t) % 250 == 17 ? -20 : 0), 0.1, 5);

    Curve removed = Spikes.removed(spiked);

    assertThat(clean.size() - removed.size()).isEqualTo(8);
    for (int i = 0; i < removed.size(); i++) {
      assertThat(removed.level(i)).isCloseTo(rise(removed.time(i)), within(0.6));
    }
  }

  @Test
  void nothingIsLeftOutOfAnHonestCurve() {
    Curve steep = Drawn.noisy(10, 100, t -> 90 * (1 - Math.exp(-t / 0.3)), 0.1, 5);
    Curve step = Drawn.noisy(10, 100, t -> t < 5 ? 0 : 80, 0.1, 5);

    assertThat(Spikes.removed(steep).size()).isEqualTo(steep.size());
    assertThat(Spikes.removed(step).size()).isEqualTo(step.size());
  }

  @ParameterizedTest
  @CsvSource({"0.02", "0.12", "0.3"})
  void noiseIsToldFromTheRise(double noise) {
    Curve curve = Drawn.noisy(30, 100, SpikesAndSlipsTest::rise, noise, 9);

    assertThat(Spikes.noise(curve)).isCloseTo(noise, within(0.1 * noise));
  }

  /** A slip is a fall of more than 3 kPa that is not a spike (the rules for a test). */
  @ParameterizedTest
  @CsvSource({"2.5, false", "3.5, true", "20, true"})
  void aFallOfMoreThanThreeKilopascalsIsASlip(double depth, boolean slip) {
    Curve curve =
        Drawn.curve(20, 100, t -> t < 8 ? 8 * t : t < 9 ? 64 : t < 10 ? 64 - depth : 55 + t);

    Optional<Double> found = Slip.in(curve);

    assertThat(found.isPresent()).isEqualTo(slip);
    found.ifPresent(d -> assertThat(d).isCloseTo(depth, within(0.01)));
  }

  @Test
  void aSpikeIsNoSlip() {
    Curve curve = Drawn.curve(20, 100, t -> rise(t) - (Math.round(100 * t) == 1_000 ? 20 : 0));

    assertThat(Slip.in(Spikes.removed(curve))).isEmpty();
  }

  /** dv/dt = 90/6 exp(-t/6). */
  @Test
  void theFinalSlopeIsThatOfTheFormula() {
    Curve curve = Drawn.noisy(20, 100, SpikesAndSlipsTest::rise, 0.05, 2);
    double steepest = 15 * Math.exp(-17 / 6.0);
    double last = 15 * Math.exp(-20 / 6.0);

    assertThat(FinalSlope.of(curve)).isBetween(last, steepest);
    assertThat(FinalSlope.of(Drawn.noisy(20, 100, t -> 90, 0.05, 2))).isCloseTo(0, within(0.02));
  }
}
