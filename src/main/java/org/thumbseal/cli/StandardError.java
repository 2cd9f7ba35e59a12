package org.thumbseal.cli;

import java.io.IOException;
import java.io.OutputStream;
import java.lang.ProcessBuilder.Redirect;

/** Tells whether a person is looking at standard error. */
final class StandardError {
  private StandardError() {}

  /** Whether standard error is a terminal. */
  static boolean isSeen() {
    return isTerminal();
  }

  /** Whether this stream is standard error, and that is a terminal. */
  static boolean isSeenAt(OutputStream stream) {
    return stream == System.err && isTerminal();
  }

  /**
   * Java 17 only knows of standard input and output together. So POSIX's own {@code test} is asked;
   * where there is none, as on Windows, the answer is no.
   */
  private static boolean isTerminal() {
    try {
      ProcessBuilder test = new ProcessBuilder("test", "-t", "2").redirectError(Redirect.INHERIT);
      return test.start().waitFor() == 0;
    } catch (IOException e) {
      return false;
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
      return false;
    }
  }
}
