package org.thumbseal.cli;

/** Exit codes, the same for all commands. */
final class ExitCode {
  static final int GOOD = 0;

  /** It ran, and something did not pass, verify or is due. */
  static final int NOT_PASSED = 1;

  /** Wrong usage or unreadable input. */
  static final int USAGE = 2;

  /** The machine failed it: port, disk, permission. */
  static final int MACHINE = 3;

  private ExitCode() {}
}
