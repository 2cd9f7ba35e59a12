package org.thumbseal.link;

import java.time.Duration;
import java.util.Locale;
import java.util.Optional;
import java.util.stream.Collectors;
import java.util.stream.Stream;

/** How boards of one kind take it that their port is opened, so that nobody has to know it. */
enum BoardFamily {
  /** Speaks whatever the host does with DTR and RTS. */
  PLAIN(ModemLines.LEAVE, 0),
  /** A pulse on DTR starts it anew; then its boot loader takes up to 2 s. */
  RESET_ON_OPEN(ModemLines.CLEAR, 2_500),
  /** USB is inside the processor, and nothing is sent before DTR is up. */
  NATIVE_USB(ModemLines.ASSERT, 0),
  /** Reset and boot mode hang on DTR and RTS; neither may be up alone. */
  BOOT_LINES(ModemLines.CLEAR, 1_000);

  private final ModemLines lines;
  private final Duration settle;

  BoardFamily(ModemLines lines, long settleMillis) {
    this.lines = lines;
    this.settle = Duration.ofMillis(settleMillis);
  }

  ModemLines lines() {
    return lines;
  }

  Duration settle() {
    return settle;
  }

  String code() {
    return name().toLowerCase(Locale.ROOT).replace('_', '-');
  }

  static Optional<BoardFamily> ofCode(String code) {
    return Stream.of(values()).filter(family -> family.code().equals(code)).findFirst();
  }

  static String codes() {
    return Stream.of(values()).map(BoardFamily::code).collect(Collectors.joining(", "));
  }
}
