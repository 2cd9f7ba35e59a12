package org.thumbseal.trend;

import java.util.Arrays;
import java.util.List;
import java.util.stream.IntStream;

/** Readings as columns: day, value, number of the sensor, and its common error at most. */
final class Points {
  private final double[] days;
  private final double[] values;
  private final int[] sensors;
  private final double[] common;

  private Points(double[] days, double[] values, int[] sensors, double[] common) {
    this.days = days;
    this.values = values;
    this.sensors = sensors;
    this.common = common;
  }

  static Points of(List<Reading> readings) {
    List<String> names = readings.stream().map(Reading::sensor).distinct().toList();
    return new Points(
        readings.stream().mapToDouble(Reading::day).toArray(),
        readings.stream().mapToDouble(Reading::value).toArray(),
        readings.stream().mapToInt(r -> names.indexOf(r.sensor())).toArray(),
        readings.stream().mapToDouble(Reading::common).toArray());
  }

  int size() {
    return days.length;
  }

  double day(int i) {
    return days[i];
  }

  double value(int i) {
    return values[i];
  }

  boolean together(int i, int j) {
    return sensors[i] == sensors[j];
  }

  Points from(int first) {
    return between(first, size());
  }

  /** Those from one to another, the other not. */
  Points between(int first, int end) {
    return new Points(
        Arrays.copyOfRange(days, first, end),
        Arrays.copyOfRange(values, first, end),
        Arrays.copyOfRange(sensors, first, end),
        Arrays.copyOfRange(common, first, end));
  }

  /** The points of each sensor by themselves. */
  List<Points> bySensor() {
    return Arrays.stream(sensors).distinct().mapToObj(this::only).toList();
  }

  private Points only(int sensor) {
    int[] at = IntStream.range(0, size()).filter(i -> sensors[i] == sensor).toArray();
    return new Points(
        Arrays.stream(at).mapToDouble(i -> days[i]).toArray(),
        Arrays.stream(at).mapToDouble(i -> values[i]).toArray(),
        new int[at.length],
        Arrays.stream(at).mapToDouble(i -> common[i]).toArray());
  }

  /**
   * The same, as if of one sensor where its sensors cannot be the reason why they differ: what is
   * left between two of them is more than both their common errors allow, so the pump has changed.
   * To take it for an error of the sensor would hide a repair, and half of a trend.
   */
  Points reconciled() {
    double[] slopes = TheilSen.slopes(this);
    double slope = slopes.length == 0 ? 0 : Median.ofSorted(slopes);
    boolean apart =
        Arrays.stream(sensors).distinct().anyMatch(sensor -> isBeyondItsError(sensor, slope));
    return apart ? new Points(days, values, new int[size()], common) : this;
  }

  private boolean isBeyondItsError(int sensor, double slope) {
    Points one = only(sensor);
    Points last = only(sensors[size() - 1]);
    double allowed = Math.hypot(Median.of(one.common), Median.of(last.common));
    return Math.abs(last.level(slope) - one.level(slope)) > allowed;
  }

  /**
   * As if the last sensor had measured all: each other one is shifted so that the medians of what
   * the slope leaves are the same.
   */
  Points levelled(double slope) {
    int last = sensors[size() - 1];
    double[] shifted = values.clone();
    for (int sensor : Arrays.stream(sensors).distinct().toArray()) {
      double shift = only(last).level(slope) - only(sensor).level(slope);
      IntStream.range(0, size())
          .filter(i -> sensors[i] == sensor)
          .forEach(i -> shifted[i] += shift);
    }
    return new Points(days, shifted, new int[size()], common);
  }

  /** Median of value - slope * day. */
  double level(double slope) {
    return Median.of(
        IntStream.range(0, size()).mapToDouble(i -> values[i] - slope * days[i]).toArray());
  }

  double meanDay() {
    return Arrays.stream(days).average().orElse(0);
  }

  double middleDay() {
    return Median.of(days);
  }

  double span() {
    return size() == 0 ? 0 : days[size() - 1] - days[0];
  }
}
