package org.thumbseal.cli;

import org.thumbseal.seal.KeyException;

/** The end of a command that could not do its work: one line for a person, and an exit code. */
final class Failure extends RuntimeException {
  private static final long serialVersionUID = 1L;

  private final int exitCode;

  private Failure(int exitCode, String message) {
    super(message);
    this.exitCode = exitCode;
  }

  /** The input or the options are wrong. */
  static Failure usage(String message) {
    return new Failure(ExitCode.USAGE, message);
  }

  /** It ran, and what it looked at is not as it has to be. */
  static Failure notPassed(String message) {
    return new Failure(ExitCode.NOT_PASSED, message);
  }

  /** Port, disk or permission. */
  static Failure machine(String message) {
    return new Failure(ExitCode.MACHINE, message);
  }

  /** A key that cannot be used, for whichever of the two reasons. */
  static Failure of(KeyException e) {
    String message = String.valueOf(e.getMessage());
    return e.machineFailed() ? machine(message) : usage(message);
  }

  int exitCode() {
    return exitCode;
  }
}
