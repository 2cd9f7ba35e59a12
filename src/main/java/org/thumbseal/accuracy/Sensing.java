package org.thumbseal.accuracy;

import java.util.Random;
import java.util.SplittableRandom;
import org.thumbseal.simulate.Line;
import org.thumbseal.simulate.Scenario;
import org.thumbseal.simulate.Sensor;

/** With what sensor and over what line a pump is tested. */
enum Sensing {
  /** No gain error. */
  EXACT,
  /** Gain drawn normal, with the standard uncertainty that the budget states. */
  NORMAL,
  /** Gain drawn rectangular, +-2.5 % of reading, as the budget describes it. */
  RECTANGULAR,
  /** The same gain, and 1 % of the lines lost or damaged. */
  BAD_LINE;

  private static final double HALF_WIDTH = 0.025;
  private static final double LOST = 0.003;
  private static final double DAMAGED = 0.007;

  /** The test of a scenario, sensed in this way; the same for the same scenario. */
  Scenario of(Scenario scenario) {
    Scenario sensed = scenario.with(gaining(scenario.sensor(), chance(scenario.seed())));
    return this == BAD_LINE
        ? sensed.with(new Line(scenario.line().burst(), LOST, DAMAGED, true))
        : sensed;
  }

  private Sensor gaining(Sensor sensor, Random random) {
    return sensor.with(sensor.transducer().gaining(gain(random)));
  }

  /** Neighbouring seeds of {@link Random} begin alike; these do not. */
  private static Random chance(long seed) {
    return new Random(new SplittableRandom(seed).nextLong());
  }

  private double gain(Random random) {
    return switch (this) {
      case EXACT -> 0;
      case NORMAL -> HALF_WIDTH / Math.sqrt(3) * random.nextGaussian();
      case RECTANGULAR, BAD_LINE -> HALF_WIDTH * (2 * random.nextDouble() - 1);
    };
  }
}
