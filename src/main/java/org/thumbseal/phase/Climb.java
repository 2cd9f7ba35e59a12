package org.thumbseal.phase;

/** A vacuum that left the baseline: first a suspicion, then a test, then its end. */
final class Climb {
  /** What a slot means for the test. */
  enum Step {
    NOTHING_YET,
    WAS_NOTHING,
    WAS_A_STEP,
    IS_A_TEST,
    IS_HOLDING,
    IS_DECAYING,
    HAS_DECAYED,
    IS_RELEASED,
    IS_OVERLONG
  }

  private static final double BACK_AT_BASE = 0.5;
  private static final double CERTAIN_RISE = 15;
  private static final double SMALLEST_RISE = 3;
  private static final double LONGEST_DOUBT = 8;
  private static final double STEADY_FOR = 0.7;
  private static final double STEADY = 0.3;
  private static final double STEADY_SHARE = 0.06;
  private static final double SMALLEST_SHORT_TEST = 15;
  private static final double LONGEST_TOUCH = 10;
  private static final double LONGEST_TEST = 400;
  private static final double RELEASED_SHARE = 0.2;
  private static final double HALF_GONE = 0.5;
  private static final double SHORTEST_SHELF = 2.2;
  private static final double HOLD_GROWTH_IN_TWO_SECONDS = 0.4;

  private final Trace trace = new Trace();
  private final Shelf shelf = new Shelf();
  private final double noise;
  private double base;
  private double onset;
  private boolean test;
  private boolean holding;
  private double maximum = Double.NEGATIVE_INFINITY;
  private double lastHigh;
  private Fall fall = Fall.NONE;

  Climb(double base, double noise, Slot first) {
    this.base = base;
    this.noise = noise;
    this.onset = first.seconds();
    trace.add(first);
  }

  double base() {
    return base;
  }

  double onsetSeconds() {
    return onset;
  }

  /** Below this the inlet is open again, kPa. */
  double releasedLevel() {
    return base + Math.max(1.5, RELEASED_SHARE * (Math.max(maximum, trace.level()) - base));
  }

  double fallSeconds() {
    return fall.start();
  }

  /** Whether it was too little for too short to be a test. */
  boolean isTouch() {
    return maximum - base < SMALLEST_SHORT_TEST && fall.start() - onset < LONGEST_TOUCH;
  }

  /** Whether a test is certain enough to be measured if the record ended now. */
  boolean isTest() {
    return test || trace.level() - base >= SMALLEST_RISE + 2;
  }

  /** Whether it is known that the inlet is blocked. */
  boolean isBlocked() {
    return test;
  }

  boolean isDecaying() {
    return fall.isDecay();
  }

  Step step(Slot slot) {
    trace.add(slot);
    double level = trace.level();
    double now = slot.seconds();
    if (!test) {
      return suspect(now, level);
    }
    if (now - onset > LONGEST_TEST) {
      return Step.IS_OVERLONG;
    }
    return fall.isNone() ? rise(now, level) : fall(now, slot.kilopascals());
  }

  private Step suspect(double now, double level) {
    double rise = level - base;
    if (rise < BACK_AT_BASE) {
      return Step.WAS_NOTHING;
    }
    test = rise >= CERTAIN_RISE;
    return test ? Step.IS_A_TEST : now - onset < 1 ? Step.NOTHING_YET : judge(now, level);
  }

  private Step judge(double now, double level) {
    double spread = trace.spreadOver(STEADY_FOR);
    boolean steady = spread < Math.max(STEADY + STEADY_SHARE * (level - base), 5 * noise);
    if (steady || now - onset > LONGEST_DOUBT) {
      return Step.WAS_A_STEP;
    }
    test = level - base >= SMALLEST_RISE;
    return test ? Step.IS_A_TEST : Step.NOTHING_YET;
  }

  private Step rise(double now, double level) {
    maximum = Math.max(maximum, level);
    if (level >= maximum - drop() / 3) {
      lastHigh = now;
    }
    if (level < maximum - drop()) {
      fall = new Fall(lastHigh, level, false, Double.NaN);
      return Step.NOTHING_YET;
    }
    if (now - onset > SHORTEST_SHELF && shelf.isLeft(trace, now, level - base)) {
      base += shelf.height();
      onset = shelf.leftSeconds();
      holding = false;
      return Step.IS_A_TEST;
    }
    return hold(now, level);
  }

  private Step hold(double now, double level) {
    double growth = level - trace.meanOfAges(1.8, 2.2);
    double recent = level - trace.meanOfAges(0.8, 1.2);
    boolean flat = Math.max(Math.abs(growth), Math.abs(recent)) < HOLD_GROWTH_IN_TWO_SECONDS;
    if (holding || !flat || now - onset < 3) {
      return Step.NOTHING_YET;
    }
    holding = true;
    return Step.IS_HOLDING;
  }

  /** A fall that ripple and noise do not explain, kPa. */
  private double drop() {
    return Math.max(3, 0.06 * (maximum - base));
  }

  private Step fall(double now, double level) {
    fall = fall.with(level);
    if (level > fall.lowest() + Math.max(2, 0.05 * (maximum - base))) {
      fall = Fall.NONE;
      maximum = level;
      return Step.NOTHING_YET;
    }
    return level < openLevel() ? low(now, level) : wait(now);
  }

  /**
   * Once the maximum was held there is nothing a thumb could lose; somebody waits for the answer.
   */
  private double openLevel() {
    boolean heldAndQuick = holding && !fall.isDecay();
    return heldAndQuick ? base + HALF_GONE * (maximum - base) : releasedLevel();
  }

  private Step low(double now, double level) {
    boolean decayed = fall.isDecay() && !isSteep(level);
    fall = fall.lowSince(now);
    return !fall.isOver(now, holding)
        ? Step.NOTHING_YET
        : decayed ? Step.HAS_DECAYED : Step.IS_RELEASED;
  }

  private boolean isSteep(double level) {
    double before = trace.meanOfAges(0.8, 1.2);
    return before - level > 0.5 * (before - base);
  }

  private Step wait(double now) {
    double lasted = now - fall.start();
    if (!fall.isDecay() && lasted > Fall.LONGEST_RELEASE) {
      fall = fall.asDecay();
      return Step.IS_DECAYING;
    }
    return lasted > Fall.LONGEST_DECAY ? Step.HAS_DECAYED : Step.NOTHING_YET;
  }
}
