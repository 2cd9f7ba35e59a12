package org.thumbseal.fleet;

import java.util.ArrayList;
import java.util.List;

/**
 * What becomes of a pump, and of how many of sixty. Assumed: no published record of wards was
 * found.
 */
public enum Fate {
  /** Nothing but scatter and season. */
  STEADY(20),
  /** The same, of one that never had much to spare. */
  NEAR_LIMIT(6),
  /** 0.6 to 1.4 % of the speed goes each month. */
  SLOW_WEAR(10),
  /** 2 to 4.6 % goes. */
  FAST_WEAR(6),
  /** A leak begins at some month and takes 0.9 to 2.1 kPa more each month. */
  GROWING_LEAK(6),
  /** A leak is there from one month to the next. */
  SUDDEN_LEAK(4),
  /** The filter clogs; it is replaced every nine months. */
  CLOGGING(4),
  /** The spring of the vacuum control tires. */
  DRIFTING_CONTROL(2),
  /** Another jar from some month on, which somebody writes down. */
  OTHER_JAR(2);

  private final int ofSixty;

  Fate(int ofSixty) {
    this.ofSixty = ofSixty;
  }

  /** One for each of sixty pumps, those of a kind one after another. */
  static List<Fate> ofSixty() {
    List<Fate> all = new ArrayList<>();
    for (Fate fate : values()) {
      for (int i = 0; i < fate.ofSixty; i++) {
        all.add(fate);
      }
    }
    return all;
  }
}
