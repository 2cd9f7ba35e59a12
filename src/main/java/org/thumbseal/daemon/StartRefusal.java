package org.thumbseal.daemon;

import java.util.Locale;

/** Why a start was not taken. */
public enum StartRefusal {
  /** Nothing comes from the sensor. */
  NOT_CONNECTED("no sensor is connected to this port; connect it, then start again"),
  /** The inlet is blocked. */
  TEST_RUNNING("a test is running on this port; let go first, then start again"),
  /** The mains cord or plug was found damaged. */
  MAINS_FORBIDDEN(
      "the mains cord or plug is not sound: do not switch the pump on; have it replaced, say so,"
          + " then start again");

  private final String text;

  StartRefusal(String text) {
    this.text = text;
  }

  /** The word for programs, with dashes. */
  public String code() {
    return name().toLowerCase(Locale.ROOT).replace('_', '-');
  }

  /** What is wrong and what to do, one line. */
  public String text() {
    return text;
  }
}
