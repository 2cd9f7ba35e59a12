package org.thumbseal.archive;

import java.time.DateTimeException;
import java.time.Instant;
import java.time.temporal.ChronoUnit;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * Who holds a lock, as it stands in the file.
 *
 * @param process its id on this machine, or on the one that shares the directory
 * @param since when it took the lock
 */
record LockHolder(long process, Instant since) {
  private static final Pattern LINE = Pattern.compile("([0-9]{1,18}) ([0-9TZ:-]{20})\\s*");

  /** This process, from now on. */
  static LockHolder here() {
    return new LockHolder(
        ProcessHandle.current().pid(), Instant.now().truncatedTo(ChronoUnit.SECONDS));
  }

  /** Reads what {@link #line} wrote; empty for anything else. */
  static Optional<LockHolder> read(String content) {
    Matcher parts = LINE.matcher(content);
    try {
      return parts.matches()
          ? Optional.of(
              new LockHolder(Long.parseLong(parts.group(1)), Instant.parse(parts.group(2))))
          : Optional.empty();
    } catch (DateTimeException e) {
      return Optional.empty();
    }
  }

  String line() {
    return process + " " + since + "\n";
  }

  @Override
  public String toString() {
    return "process " + process + ", since " + since;
  }
}
