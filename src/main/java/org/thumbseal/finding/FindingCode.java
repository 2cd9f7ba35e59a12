package org.thumbseal.finding;

/**
 * What a curve can suggest, and what to look at next, in the order in which it costs least and
 * fails most (common practice, no published source).
 */
public enum FindingCode {
  /** Air comes in between the inlet and the pump. */
  LEAK(
      "leak",
      "Look at lid gasket and jar joint first, then at the joints of the tubes and the control."
          + " Block at the next joint towards the pump: the leak lies before the first place at"
          + " which the test is good."),
  /** Something between jar and pump lets too little air through. */
  RESTRICTION(
      "restriction",
      "Look at the filter between jar and pump: if it is discoloured, wet or old, put in a new one"
          + " and test again. Then look for a kinked or clogged tube and a stuck overflow valve."),
  /** Valves, diaphragm or motor of the pump itself. */
  WORN_PUMP(
      "worn-pump",
      "Test again with the pump's own inlet blocked, without jar and filter. If that is no better,"
          + " refer the pump: valves, diaphragm, brushes and mains voltage are for a qualified"
          + " technician."),
  /** The vacuum control lets air in. */
  CONTROL_NOT_AT_MAXIMUM(
      "control-not-at-maximum",
      "Turn the vacuum control to its maximum and test again. If it is there already, the control"
          + " itself lets air in: clean it or have it replaced."),
  /** Less than the jar was evacuated. */
  REDUCED_VOLUME(
      "reduced-volume",
      "See that the jar is empty, of the right size, and that the inlet of the jar was blocked and"
          + " not that of the pump; see that the float valve moves freely. Test again."),
  /** Something stands in the open inlet. */
  BLOCKED_INLET(
      "blocked-inlet",
      "Take everything off the inlet of the jar, clear and clean it, and test again with the inlet"
          + " wide open at first."),
  /** The pump hardly pulls at all. */
  NO_VACUUM(
      "no-vacuum",
      "See that the pump runs, the lid is on with its gasket, all tubes are on and the control is"
          + " shut. If the pump's own gauge shows vacuum, something is blocked between jar and"
          + " pump; if not, refer the pump.");

  private final String code;
  private final String advice;

  FindingCode(String code, String advice) {
    this.code = code;
    this.advice = advice;
  }

  /** The name in result documents. */
  public String code() {
    return code;
  }

  String advice() {
    return advice;
  }
}
