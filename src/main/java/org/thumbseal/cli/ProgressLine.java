package org.thumbseal.cli;

import java.io.PrintWriter;
import java.util.Locale;
import java.util.function.LongSupplier;

/**
 * How far a long run has come, as one line that is written over and over and wiped away at the end.
 * No colours and no escape sequences, so that it does on any terminal. For one thread.
 */
final class ProgressLine {
  private static final int BAR = 30;
  private static final long EVERY_NANOS = 100_000_000;

  private final PrintWriter err;
  private final boolean visible;
  private final LongSupplier nanos;
  private int width;
  private long last;

  /**
   * A line that is not there yet.
   *
   * @param visible false: nothing is ever written
   * @param nanos a clock that only runs forward
   */
  ProgressLine(PrintWriter err, boolean visible, LongSupplier nanos) {
    this.err = err;
    this.visible = visible;
    this.nanos = nanos;
    this.last = nanos.getAsLong() - EVERY_NANOS;
  }

  /** So much is done; written ten times a second at most. */
  void show(long done, long all) {
    long now = nanos.getAsLong();
    if (visible && now - last >= EVERY_NANOS) {
      last = now;
      write(text(done, all));
    }
  }

  /** Wipes it away, before something else is written or at the end. */
  void clear() {
    if (width > 0) {
      err.print("\r" + " ".repeat(width) + "\r");
      err.flush();
      width = 0;
    }
  }

  private void write(String text) {
    err.print("\r" + text);
    err.flush();
    width = text.length();
  }

  private static String text(long done, long all) {
    int full = (int) (BAR * done / Math.max(1, all));
    String bar = "#".repeat(full) + ".".repeat(BAR - full);
    long percent = 100 * done / Math.max(1, all);
    return String.format(Locale.ROOT, "[%s] %3d %%, %d of %d", bar, percent, done, all);
  }
}
