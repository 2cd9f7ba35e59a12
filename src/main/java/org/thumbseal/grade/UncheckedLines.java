package org.thumbseal.grade;

import static org.thumbseal.grade.Judged.number;

/** The word on lines without a checksum. */
final class UncheckedLines {
  private static final double MANY = 0.01;

  private UncheckedLines() {}

  static Reason reason(long rejected, long samples) {
    String text =
        "The sensor sends its readings without a checksum. Lines that do not fit and jumps that no"
            + " pump can make were left out ("
            + number("%d of %d)", rejected, rejected + samples)
            + ", but a small error in a digit cannot be told from a reading.";
    String advice =
        rejected > MANY * (rejected + samples)
            ? " That is a lot: look at cable, plug and line speed, and test again."
            : "";
    return new Reason(ReasonCode.UNCHECKED_LINE, text + advice);
  }
}
