package org.thumbseal.trend;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;

/**
 * The values of one quantity of one pump, and when something was done to the pump.
 *
 * @param readings put in the order of their days
 * @param changes days on which a part, the jar or anything else of the pump was changed: a value of
 *     the same instant came after it
 */
public record Series(List<Reading> readings, List<Double> changes) {
  /** More values than this cost time and tell nothing more; neighbours are put together. */
  private static final int MOST = 60;

  /** Wider groups than this (days) would blur a trend; rather leave more values. */
  private static final double WIDEST = 64;

  /** Puts both in order. */
  public Series {
    readings = readings.stream().sorted(Comparator.comparingDouble(Reading::day)).toList();
    changes = changes.stream().sorted().toList();
  }

  /** The days of the readings, in order. */
  List<Double> days() {
    return readings.stream().map(Reading::day).toList();
  }

  /**
   * Tests of one visit are one value, their median: the same weather, zero and jar make them alike,
   * and five in an hour are no trend. The same, over longer times, where there are very many.
   */
  Series thinned() {
    List<Reading> thin = grouped(1);
    for (double width = 2; thin.size() > MOST && width <= WIDEST; width *= 2) {
      thin = grouped(width);
    }
    return new Series(thin, changes);
  }

  private List<Reading> grouped(double width) {
    List<Reading> found = new ArrayList<>();
    List<Reading> group = new ArrayList<>();
    for (Reading reading : readings) {
      if (!group.isEmpty() && !belongs(reading, group.get(0), width)) {
        found.add(middle(group));
        group.clear();
      }
      group.add(reading);
    }
    if (!group.isEmpty()) {
      found.add(middle(group));
    }
    return found;
  }

  private boolean belongs(Reading reading, Reading first, double width) {
    return reading.day() - first.day() < width
        && reading.sensor().equals(first.sensor())
        && changes.stream().noneMatch(c -> first.day() < c && c <= reading.day());
  }

  private static Reading middle(List<Reading> group) {
    return new Reading(
        Median.of(group.stream().mapToDouble(Reading::day).toArray()),
        Median.of(group.stream().mapToDouble(Reading::value).toArray()),
        group.get(0).sensor(),
        group.stream().mapToDouble(Reading::common).max().orElseThrow());
  }
}
