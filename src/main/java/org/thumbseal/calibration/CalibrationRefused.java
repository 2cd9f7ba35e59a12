package org.thumbseal.calibration;

import java.util.Locale;

/** A calibration that cannot be right; the message is one line that says what to do. */
public final class CalibrationRefused extends Exception {
  private static final long serialVersionUID = 1L;

  /** Says what is wrong and what to do; numbers as {@link String#format} takes them. */
  CalibrationRefused(String format, Object... values) {
    super(String.format(Locale.ROOT, format, values));
  }
}
