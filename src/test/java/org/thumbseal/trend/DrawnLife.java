package org.thumbseal.trend;

import java.util.ArrayList;
import java.util.List;
import java.util.Random;

/** Three years of monthly tests of one pump, as the trend sees them, and what came of it. */
final class DrawnLife {
  static final int MONTHS = 36;
  static final double MONTH = 30.4375;

  private final DrawnPump pump;
  private final List<Reading> times = new ArrayList<>();
  private final List<Reading> maxima = new ArrayList<>();
  private final List<Double> changes = new ArrayList<>();
  private final List<Integer> ages = new ArrayList<>();

  /**
   * @param spread standard deviation of the gain of a sensor; it is calibrated anew every 12 months
   */
  DrawnLife(DrawnPump pump, Random random, double spread) {
    this.pump = pump;
    int age = 0;
    double gain = 0;
    int phase = random.nextInt(12);
    for (int month = 0; month < MONTHS; month++, age++) {
      if (month == 0 || month % 12 == phase) {
        gain = spread * random.nextGaussian();
      }
      if (month > 0 && pump.truth(month - 1, age - 1).failed()) {
        age = 0;
        changes.add(month * MONTH);
      } else if (pump.filterReplaced(age)) {
        age = 0;
        changes.add(month * MONTH);
      }
      ages.add(age);
      test(month, age, gain, "sensor " + (month + 12 - phase) / 12);
    }
  }

  private void test(int month, int age, double gain, String sensor) {
    DrawnPump.Truth read = pump.tested(month, age, gain);
    times.add(new Reading(month * MONTH, read.riseTime(), sensor));
    maxima.add(new Reading(month * MONTH, read.maximum(), sensor));
  }

  DrawnPump pump() {
    return pump;
  }

  boolean failed(int month) {
    return pump.truth(month, ages.get(month)).failed();
  }

  /** Whether it fails within so many months after a test, if nothing is done. */
  boolean failsWithin(int month, int months) {
    for (int later = 1; later <= months; later++) {
      if (pump.truth(month + later, ages.get(month) + later).failed()) {
        return true;
      }
    }
    return false;
  }

  /** What is known after the test of a month, of the quantity that is to fail first. */
  List<Crossing> named(int month, TrendRules rules) {
    List<Crossing> all = new ArrayList<>();
    crossing(times, month, DrawnPump.RISE_TIME, rules).ifPresent(all::add);
    crossing(maxima, month, DrawnPump.MAXIMUM, rules).ifPresent(all::add);
    return all;
  }

  private java.util.Optional<Crossing> crossing(
      List<Reading> readings, int month, Limit limit, TrendRules rules) {
    Trend trend = trend(readings, month, rules);
    return trend.line().flatMap(line -> Crossing.of(line, limit, month * MONTH, rules));
  }

  private Trend trend(List<Reading> readings, int month, TrendRules rules) {
    double today = month * MONTH;
    return Trend.of(
        new Series(
            readings.subList(0, month + 1), changes.stream().filter(c -> c <= today).toList()),
        rules);
  }
}
