package org.thumbseal.page;

import org.thumbseal.json.Decimals;
import org.thumbseal.json.Json;
import tools.jackson.databind.node.ArrayNode;

/** The curve as the page draws it: 25 points a second at most, two minutes of them. */
final class DrawnCurve {
  /** Two points are at least this far apart, s. */
  private static final double SLOT = 0.04;

  private static final double KEPT_SECONDS = 120;
  private static final int MOST = 3_000;

  private final double[] seconds = new double[MOST];
  private final float[] kilopascals = new float[MOST];
  private long drawn;
  private long begin;
  private double last = Double.NEGATIVE_INFINITY;

  /** Whether a reading at this time is drawn. */
  boolean isDue(double now) {
    return now - last >= SLOT;
  }

  void add(double now, double vacuum) {
    last = now;
    int place = (int) (drawn % MOST);
    seconds[place] = now;
    kilopascals[place] = (float) vacuum;
    drawn++;
  }

  /** Forgets all: device time begins anew. */
  void clear() {
    begin = drawn;
    last = Double.NEGATIVE_INFINITY;
  }

  /** Number of points drawn since the beginning of the program. */
  long drawn() {
    return drawn;
  }

  /**
   * The points from one count of those drawn to another, as far as they are kept, as pairs of s and
   * kPa.
   */
  ArrayNode between(long before, long until) {
    ArrayNode points = Json.array();
    for (long i = Math.max(before, oldest()); i < until; i++) {
      int place = (int) (i % MOST);
      if (last - seconds[place] <= KEPT_SECONDS) {
        points
            .addArray()
            .add(Decimals.round(seconds[place], 3))
            .add(Decimals.round(kilopascals[place], 2));
      }
    }
    return points;
  }

  private long oldest() {
    return Math.max(begin, drawn - MOST);
  }

  /** Mean over a stretch of time, kPa; not a number where nothing was drawn then. */
  double mean(double from, double to) {
    double sum = 0;
    int count = 0;
    for (long i = oldest(); i < drawn; i++) {
      int place = (int) (i % MOST);
      if (seconds[place] >= from && seconds[place] < to) {
        sum += kilopascals[place];
        count++;
      }
    }
    return sum / count;
  }
}
