package org.thumbseal.trend;

import java.util.Random;

/**
 * A pump of the study by a model of a few lines: pumping speed S, ultimate pressure p, volume V and
 * leak L; the vacuum ends at pa - p - pa L / S and goes there with V / S. It is repaired in the
 * month after a failed test.
 */
final class DrawnPump {
  static final double RISE = 65;
  static final double AIR = 101.3;
  static final Limit RISE_TIME = new Limit(10, Limit.Side.ABOVE);
  static final Limit MAXIMUM = new Limit(80, Limit.Side.BELOW);

  private final Wear wear;
  private final Random random;
  private final double soundTime;
  private final double ultimate;
  private final double onset;
  private final double rate;
  private final double jar;
  private final double season;

  DrawnPump(Wear wear, Random random) {
    this.wear = wear;
    this.random = random;
    double share = random.nextDouble();
    soundTime = wear == Wear.NEAR_LIMIT ? 9 + 0.8 * share : 4.5 + 3 * share;
    ultimate = wear == Wear.NEAR_LIMIT ? 9 : 6 + 6 * random.nextDouble();
    onset = 6 + 24 * random.nextDouble();
    rate = 0.6 + 0.8 * random.nextDouble();
    jar = 0.8 + 0.4 * random.nextDouble();
    season = wear == Wear.NEAR_LIMIT ? 0.01 : 0.01 + 0.02 * random.nextDouble();
  }

  Wear wear() {
    return wear;
  }

  /**
   * What the pump truly does.
   *
   * @param riseTime s
   * @param maximum kPa
   */
  record Truth(double riseTime, double maximum) {
    boolean failed() {
      return RISE_TIME.beyond(riseTime) || MAXIMUM.beyond(maximum);
    }
  }

  /**
   * Without weather.
   *
   * @param month since the beginning
   * @param age months since the last repair
   */
  Truth truth(double month, double age) {
    return truth(month, age, AIR);
  }

  private Truth truth(double month, double age, double air) {
    double lost = lost(age);
    double slower = (1 + season * Math.sin(2 * Math.PI * month / 12)) / (1 - Math.min(0.9, lost));
    double end = ultimate + 12 * lost + leak(month, age);
    double time = soundTime * slower * (wear == Wear.OTHER_JAR && month > onset ? jar : 1);
    double top = air - end;
    double scale = Math.log((AIR - 9) / (AIR - 9 - RISE));
    return new Truth(
        top <= RISE ? 60 : Math.min(60, time * Math.log(top / (top - RISE)) / scale),
        Math.max(20, top));
  }

  /** Share of the speed that wear or the filter takes. */
  private double lost(double age) {
    return switch (wear) {
      case SLOW -> 0.010 * rate * age;
      case FAST -> 0.033 * rate * age;
      case CLOGGING -> 0.025 * rate * age;
      default -> 0;
    };
  }

  /** Off the vacuum, kPa. */
  private double leak(double month, double age) {
    boolean begun = month > onset && age >= 0 && !repaired(month, age);
    return switch (wear) {
      case GROWING_LEAK -> begun ? 1.5 * rate * (month - onset) : 0;
      case SUDDEN_LEAK -> begun ? 14 * rate : 0;
      default -> 0;
    };
  }

  /** A leak that was mended does not come back. */
  private boolean repaired(double month, double age) {
    return month - age > onset;
  }

  /** Whether the filter is replaced before the test of this age. */
  boolean filterReplaced(int age) {
    return wear == Wear.CLOGGING && age > 0 && age % 9 == 0;
  }

  /**
   * What a test reads: weather 0.8 kPa, thumb, voltage and warmth 2 % of the time, the gain of the
   * sensor, which is the same for all its tests.
   */
  Truth tested(double month, double age, double gain) {
    Truth truth = truth(month, age, AIR + 0.8 * random.nextGaussian());
    double maximum = truth.maximum() * (1 + gain) + 0.15 * random.nextGaussian();
    double time = truth.riseTime() * (1 - 1.6 * gain) * (1 + 0.02 * random.nextGaussian());
    return new Truth(time, maximum);
  }
}
