package org.thumbseal.trend;

import java.util.Arrays;
import java.util.List;
import java.util.stream.IntStream;

/** Readings as columns: day, value, and the number of the sensor. */
final class Points {
  private final double[] days;
  private final double[] values;
  private final int[] sensors;

  private Points(double[] days, double[] values, int[] sensors) {
    this.days = days;
    this.values = values;
    this.sensors = sensors;
  }

  static Points of(List<Reading> readings) {
    List<String> names = readings.stream().map(Reading::sensor).distinct().toList();
    return new Points(
        readings.stream().mapToDouble(Reading::day).toArray(),
        readings.stream().mapToDouble(Reading::value).toArray(),
        readings.stream().mapToInt(r -> names.indexOf(r.sensor())).toArray());
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
    return new Points(
        Arrays.copyOfRange(days, first, days.length),
        Arrays.copyOfRange(values, first, values.length),
        Arrays.copyOfRange(sensors, first, sensors.length));
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
        new int[at.length]);
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
    return new Points(days, shifted, new int[size()]);
  }

  /** Median of value - slope * day. */
  double level(double slope) {
    return Median.of(
        IntStream.range(0, size()).mapToDouble(i -> values[i] - slope * days[i]).toArray());
  }

  double middleDay() {
    return Median.of(days);
  }

  double span() {
    return size() == 0 ? 0 : days[size() - 1] - days[0];
  }
}
