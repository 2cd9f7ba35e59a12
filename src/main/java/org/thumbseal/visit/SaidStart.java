package org.thumbseal.visit;

import java.math.BigDecimal;
import java.util.Optional;

/**
 * A start that was said to the program, not by the key of the sensor. In the header of a capture it
 * is {@code start <host seconds> page|command}, its time counted as that of the lines.
 *
 * @param hostMicros when, on the host's monotonic clock, microseconds
 * @param by who said it: page or command
 */
public record SaidStart(long hostMicros, StartedBy by) {
  /** Key of the header line. */
  public static final String KEY = "start";

  private static final int DECIMALS = 6;
  private static final BigDecimal LATEST = BigDecimal.valueOf(1_000_000_000);

  /** The header line without its key. */
  public String text() {
    return BigDecimal.valueOf(hostMicros, DECIMALS).toPlainString() + " " + by.code();
  }

  /** Reads the header line; empty where it is none of this form. */
  public static Optional<SaidStart> parse(String text) {
    String[] fields = text.strip().split("\\s+", -1);
    if (fields.length != 2 || !fields[0].matches("[0-9]{1,10}(\\.[0-9]{1,9})?")) {
      return Optional.empty();
    }
    BigDecimal seconds = new BigDecimal(fields[0]);
    return StartedBy.of(fields[1])
        .filter(by -> by != StartedBy.KEY && seconds.compareTo(LATEST) < 0)
        .map(by -> new SaidStart(seconds.movePointRight(DECIMALS).longValue(), by));
  }
}
