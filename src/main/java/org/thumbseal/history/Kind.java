package org.thumbseal.history;

import org.thumbseal.trend.Limit;

/** The quantities that are followed from test to test. */
public enum Kind {
  /** Time that the vacuum takes to climb as far as the criteria ask, s. */
  RISE_TIME("riseTime", "s", Limit.Side.ABOVE),
  /** Highest vacuum while blocked, kPa. */
  MAXIMUM("maximumVacuum", "kPa", Limit.Side.BELOW),
  /** Speed of the pump at the jar, L/min of ambient air; it has no limit. */
  SPEED("pumpingSpeed", "L/min", Limit.Side.BELOW);

  private final String member;
  private final String unit;
  private final Limit.Side bad;

  Kind(String member, String unit, Limit.Side bad) {
    this.member = member;
    this.unit = unit;
    this.bad = bad;
  }

  /** Its name in the result document. */
  public String member() {
    return member;
  }

  /** UCUM code. */
  public String unit() {
    return unit;
  }

  /** On which side a value is bad. */
  public Limit.Side bad() {
    return bad;
  }

  /** Whether a change of this size is to the bad. */
  public boolean worsens(double change) {
    return bad == Limit.Side.ABOVE ? change > 0 : change < 0;
  }
}
