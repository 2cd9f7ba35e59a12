package org.thumbseal.accuracy;

/**
 * One line of the table.
 *
 * @param what is looked at
 * @param must what it has to be; empty where it is only told
 * @param measured what it is
 * @param outcome whether that is enough
 */
public record Row(String what, String must, String measured, Outcome outcome) {

  /** Whether a bar was reached. */
  public enum Outcome {
    /** It is as good as it must be. */
    MET("met"),
    /** It is not. */
    NOT_MET("NOT MET"),
    /** There was nothing to measure it on. */
    NOT_MEASURED("not measured"),
    /** No bar is set for it. */
    TOLD("");

    private final String text;

    Outcome(String text) {
      this.text = text;
    }

    /** As the table says it. */
    public String text() {
      return text;
    }
  }

  static Row judged(String what, String must, String measured, boolean met) {
    return new Row(what, must, measured, met ? Outcome.MET : Outcome.NOT_MET);
  }

  static Row told(String what, String measured) {
    return new Row(what, "", measured, Outcome.TOLD);
  }

  static Row notMeasured(String what, String must) {
    return new Row(what, must, "-", Outcome.NOT_MEASURED);
  }
}
