package org.thumbseal.simulate;

/** What can be wrong with a pump or its circuit, and how badly it may be so in a draw. */
public enum FaultKind {
  /** Nothing. */
  NONE("none", 0, 0),
  /** A hole in jar, lid or tube. Severity: its choked flow over S0. */
  LEAK("leak", 0.02, 0.4),
  /** A clogged filter. Severity: share of the free flow that it takes. */
  RESTRICTION("restriction", 0.1, 0.7),
  /** Leaking valves. Severity: share of the reachable vacuum that is lost; speed goes too. */
  WORN_VALVES("worn-pump", 0.03, 0.35),
  /** Brushes, bearings, mains too low. Severity: share of S0 that is lost; the vacuum stays. */
  LOST_SPEED("worn-pump", 0.06, 0.6),
  /** The control lets air in. Severity: share of the reachable vacuum that is lost. */
  CONTROL_NOT_AT_MAXIMUM("control-not-at-maximum", 0.02, 0.4),
  /** Liquid in the jar. Severity: share of the jar that is taken. */
  REDUCED_VOLUME("reduced-volume", 0.06, 0.6),
  /** The open inlet is narrow. Severity: share of the reachable vacuum that stands when open. */
  BLOCKED_INLET("blocked-inlet", 0.02, 0.35),
  /** Hardly pulls. Severity: share of the reachable vacuum that is lost. */
  NO_VACUUM("no-vacuum", 0.8, 0.97);

  private final String finding;
  private final double least;
  private final double most;

  FaultKind(String finding, double least, double most) {
    this.finding = finding;
    this.least = least;
    this.most = most;
  }

  /** The code of the finding that would be right, such as {@code leak}; {@code none}. */
  public String finding() {
    return finding;
  }

  /** A fault from barely visible to gross; most are mild. */
  Fault drawn(Draw draw) {
    return this == NONE ? Fault.NONE : new Fault(this, draw.betweenLog(least, most));
  }
}
