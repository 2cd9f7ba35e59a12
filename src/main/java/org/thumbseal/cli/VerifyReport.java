package org.thumbseal.cli;

import java.io.PrintWriter;
import org.thumbseal.archive.DirectorySummary;
import org.thumbseal.archive.Outcome;
import org.thumbseal.json.Printable;
import org.thumbseal.seal.SealAnswer;

/** Tells what {@code verify} found, and keeps the worst of it for the exit code. */
abstract class VerifyReport {
  private final PrintWriter err;
  private SealAnswer worst = SealAnswer.TRUSTED_KEY;
  private boolean unreadable;

  VerifyReport(PrintWriter err) {
    this.err = err;
  }

  /** A document that was named on the command line. */
  final void file(Outcome outcome) {
    if (outcome instanceof Outcome.Corrected corrected) {
      showCorrected(corrected);
      return;
    }
    count(outcome);
    show(outcome);
  }

  /** A document in a directory that was named. */
  final void member(Outcome outcome) {
    if (outcome instanceof Outcome.Corrected corrected) {
      showCorrected(corrected);
      return;
    }
    count(outcome);
    showMember(outcome);
  }

  /** The end of a directory. */
  abstract void directory(DirectorySummary summary);

  /** Something that could not be looked at, whose line names it. */
  final void refused(String line) {
    unreadable = true;
    err.println("thumbseal: " + Printable.line(line));
  }

  /** The end of it all; gives the exit code. */
  int end() {
    if (unreadable) {
      return ExitCode.USAGE;
    }
    return worst == SealAnswer.TRUSTED_KEY ? ExitCode.GOOD : ExitCode.NOT_PASSED;
  }

  abstract void show(Outcome outcome);

  abstract void showMember(Outcome outcome);

  abstract void showCorrected(Outcome.Corrected corrected);

  static String name(Outcome outcome) {
    return Printable.line(outcome.file().toString());
  }

  private void count(Outcome outcome) {
    if (outcome instanceof Outcome.Answered answered) {
      worst = worst.or(answered.answer());
    } else if (outcome instanceof Outcome.Unreadable refused) {
      refused(name(outcome) + ": " + refused.reason());
    }
  }
}
