package org.thumbseal.measurement;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** A pump whose start shows by its strokes alone. */
class StrokesTest {
  private static final double HERTZ = 50;
  private static final double NOISE = 0.05;

  /** Level 0 until the start, then an open vacuum under strokes of an amplitude, kPa. */
  private static Curve start(double at, double amplitude, double strokes, long seed) {
    Random random = new Random(seed);
    double[] times = new double[600];
    double[] levels = new double[600];
    for (int i = 0; i < times.length; i++) {
      times[i] = i / HERTZ;
      double wave = 0.1 + amplitude * Math.cos(2 * Math.PI * strokes * times[i]);
      levels[i] = NOISE * random.nextGaussian() + (times[i] < at ? 0 : wave);
    }
    return Curve.of(times, levels);
  }

  /** 48.5 strokes a second, sampled at 50 Hz, are a wave of 1.5 Hz; 29 are one of 21 Hz. */
  @ParameterizedTest
  @ValueSource(doubles = {48.5, 29, 24})
  void findsTheStartThatNoStepShows(double strokes) {
    for (long seed = 1; seed <= 20; seed++) {
      var levels = Strokes.of(start(4, 0.3, strokes, seed)).orElseThrow();

      assertThat(levels.get(0).to()).as("seed %d", seed).isCloseTo(4, within(0.12));
      assertThat(levels.get(0).mean()).as("seed %d", seed).isCloseTo(0, within(0.02));
      assertThat(levels.get(1).mean()).as("seed %d", seed).isCloseTo(0.1, within(0.03));
    }
  }

  @Test
  void evenNoiseHasNoStart() {
    for (long seed = 1; seed <= 200; seed++) {
      assertThat(Strokes.of(start(100, 0, 1, seed))).as("seed %d", seed).isEmpty();
      assertThat(Strokes.of(start(-1, 0.3, 48.5, seed))).as("seed %d", seed).isEmpty();
    }
  }

  @Test
  void aSensorThatStandsStillIsQuiet() {
    Curve still = Curve.of(new double[] {0, 1, 2, 3, 4, 5}, new double[] {1, 1, 1, 1, 1.01, 1});

    assertThat(Strokes.of(still)).isEmpty();
    assertThat(Strokes.of(Curve.of(new double[0], new double[0]))).isEmpty();
  }
}
