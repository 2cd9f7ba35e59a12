package org.thumbseal.link;

import java.time.Duration;

/**
 * How a serial port is opened; always 8 data bits, no parity, 1 stop bit, no flow control.
 *
 * @param baud line speed, 50 to 4 000 000 baud
 * @param lines what is done with DTR and RTS
 * @param settle how long after opening what comes in is thrown away: the time a board that resets
 *     on opening needs for its boot messages; 0 to 60 s
 */
public record SerialSettings(int baud, ModemLines lines, Duration settle) {
  // Stands first: the constant below is checked against it.
  private static final Duration LONGEST_SETTLE = Duration.ofSeconds(60);

  /** 115200 baud, DTR and RTS left alone, nothing thrown away. */
  public static final SerialSettings STANDARD =
      new SerialSettings(115_200, ModemLines.LEAVE, Duration.ZERO);

  /** Refuses with {@link IllegalArgumentException} what is out of range. */
  public SerialSettings {
    if (baud < 50 || baud > 4_000_000) {
      throw new IllegalArgumentException("baud must be between 50 and 4000000, not " + baud);
    }
    if (settle.isNegative() || settle.compareTo(LONGEST_SETTLE) > 0) {
      throw new IllegalArgumentException(
          "settle must be between 0 and 60000 ms, not " + settle.toMillis());
    }
  }
}
