package org.thumbseal.pipeline;

import org.thumbseal.simulate.Scenario;

/**
 * The usual way, to compare with: a least-squares line through the raw readings of a gauge sensor.
 *
 * @param from s
 * @param to s
 * @param choked lowest vacuum that is taken, Pa
 */
record LineThrough(double from, double to, double choked) {
  private static final int FEWEST = 20;

  /** Fall of the vacuum, kPa/s; not a number where there are too few readings. */
  double slope(Scenario scenario) {
    Sums sums = new Sums();
    scenario.lines().forEachRemaining(line -> take(line.line().split("[,*]", -1), sums));
    return sums.n < FEWEST ? Double.NaN : sums.slope() / 1_000;
  }

  private void take(String[] fields, Sums sums) {
    if (fields[0].equals("S")) {
      double t = Double.parseDouble(fields[2]) / 1e6;
      double p = Double.parseDouble(fields[3]);
      if (t > from && t < to && -p > choked) {
        sums.add(t - from, p);
      }
    }
  }

  private static final class Sums {
    private double n;
    private double t;
    private double p;
    private double tt;
    private double tp;

    private void add(double time, double pressure) {
      n++;
      t += time;
      p += pressure;
      tt += time * time;
      tp += time * pressure;
    }

    private double slope() {
      return (n * tp - t * p) / (n * tt - t * t);
    }
  }
}
