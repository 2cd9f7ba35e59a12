package org.thumbseal.measurement;

import java.util.Arrays;
import org.thumbseal.fit.Points;

/** Vacuum against time; never changes. Times grow; both are finite. */
public final class Curve {
  private final double[] times;
  private final double[] levels;

  private Curve(double[] times, double[] levels) {
    this.times = times;
    this.levels = levels;
  }

  /** Makes a curve of times in s and vacuum in kPa. */
  static Curve of(double[] times, double[] levels) {
    return new Curve(times.clone(), levels.clone());
  }

  /** Number of samples. */
  public int size() {
    return times.length;
  }

  /** Time of a sample, s. */
  public double time(int index) {
    return times[index];
  }

  /** Vacuum of a sample, kPa. */
  public double level(int index) {
    return levels[index];
  }

  double lastTime() {
    return times[times.length - 1];
  }

  double firstTime() {
    return times[0];
  }

  /** Index of the first sample at or after a time; the size where there is none. */
  int indexAt(double time) {
    int found = Arrays.binarySearch(times, time);
    return found >= 0 ? found : -found - 1;
  }

  /** The part in [from, to). */
  Curve between(double from, double to) {
    int first = indexAt(from);
    return part(first, Math.max(first, indexAt(to)));
  }

  /** The samples with these indexes, the end not among them. */
  Curve part(int first, int end) {
    return new Curve(Arrays.copyOfRange(times, first, end), Arrays.copyOfRange(levels, first, end));
  }

  /** The first sample alone. */
  Curve first() {
    return new Curve(new double[] {times[0]}, new double[] {levels[0]});
  }

  boolean isEmpty() {
    return times.length == 0;
  }

  double mean() {
    return Arrays.stream(levels).average().orElse(Double.NaN);
  }

  /** The highest vacuum, kPa; 0 where there is no sample. */
  double highest() {
    return Arrays.stream(levels).max().orElse(0);
  }

  /** The lowest vacuum, kPa; 0 where there is no sample. */
  double lowest() {
    return Arrays.stream(levels).min().orElse(0);
  }

  /** Sample standard deviation about the mean, kPa; 0 for fewer than two samples. */
  double deviation() {
    double mean = mean();
    double squares = Arrays.stream(levels).map(v -> (v - mean) * (v - mean)).sum();
    return size() < 2 ? 0 : Math.sqrt(squares / (size() - 1));
  }

  /** Median distance between samples, s. */
  double period() {
    double[] steps = new double[Math.max(0, size() - 1)];
    Arrays.setAll(steps, i -> times[i + 1] - times[i]);
    return steps.length == 0 ? 0 : median(steps);
  }

  /** Means of consecutive stretches of equal length, each at the mean of its times. */
  Curve binned(double length) {
    double[] t = new double[size()];
    double[] v = new double[size()];
    int bins = 0;
    for (int i = 0; i < size(); bins++) {
      int end = Math.max(i + 1, indexAt(times[i] + length));
      t[bins] = Arrays.stream(times, i, end).average().orElseThrow();
      v[bins] = Arrays.stream(levels, i, end).average().orElseThrow();
      i = end;
    }
    return new Curve(Arrays.copyOf(t, bins), Arrays.copyOf(v, bins));
  }

  /** Each level the median of it and two neighbours on each side: spikes go, steps stay. */
  Curve medianOfFive() {
    double[] middle = new double[size()];
    Arrays.setAll(
        middle,
        i -> {
          int reach = Math.min(2, Math.min(i, size() - 1 - i));
          return median(Arrays.copyOfRange(levels, i - reach, i + reach + 1));
        });
    return new Curve(times, middle);
  }

  /** At most so many points, by averaging; all of them where there are fewer. */
  Curve thinned(int most) {
    return size() <= most ? this : binned((lastTime() - firstTime()) / most);
  }

  /** The same with a constant taken off the vacuum. */
  Curve minus(double kilopascals) {
    return new Curve(times, Arrays.stream(levels).map(v -> v - kilopascals).toArray());
  }

  /** The same with a line taken off the vacuum: its level at a time, kPa, and its slope, kPa/s. */
  Curve minusLine(double level, double slope, double at) {
    double[] rest = new double[size()];
    Arrays.setAll(rest, i -> levels[i] - level - slope * (times[i] - at));
    return new Curve(times, rest);
  }

  /** The same with the vacuum multiplied. */
  Curve times(double factor) {
    return new Curve(times, Arrays.stream(levels).map(v -> v * factor).toArray());
  }

  /** The same with its times counted from another moment. */
  Curve since(double moment) {
    return new Curve(Arrays.stream(times).map(t -> t - moment).toArray(), levels);
  }

  /** The same with its times multiplied: on a clock that runs at another rate. */
  Curve slowedBy(double rate) {
    return new Curve(Arrays.stream(times).map(t -> t * rate).toArray(), levels);
  }

  /** First time at which the vacuum is above a level, s; the last time where it never is. */
  double firstTimeAbove(double kilopascals) {
    for (int i = 0; i < size(); i++) {
      if (levels[i] > kilopascals) {
        return times[i];
      }
    }
    return lastTime();
  }

  Points points() {
    return Points.of(times, levels);
  }

  static double median(double[] values) {
    double[] sorted = values.clone();
    Arrays.sort(sorted);
    int n = sorted.length;
    return n == 0 ? Double.NaN : (sorted[(n - 1) / 2] + sorted[n / 2]) / 2;
  }
}
