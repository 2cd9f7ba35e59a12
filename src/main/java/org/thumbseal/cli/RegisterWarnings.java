package org.thumbseal.cli;

import java.io.PrintWriter;
import java.nio.file.Path;
import java.util.List;
import org.thumbseal.json.Printable;
import org.thumbseal.register.Register;
import org.thumbseal.register.RegisterMistake;
import org.thumbseal.register.RegisterRefused;

/**
 * Says on standard error what is wrong in a register, one a line.
 *
 * @param file as the user named it
 * @param err for people
 */
record RegisterWarnings(Path file, PrintWriter err) {
  /** Whoever named another kind of file does not need a hundred thousand lines about it. */
  private static final int MOST = 1_000;

  /** What is worth a look in one that is used. */
  void warn(Register register) {
    register.warnings().forEach(warning -> say("look at " + warning.line()));
  }

  /** All mistakes; what is given ends the command. */
  Failure refused(RegisterRefused refusal) {
    List<RegisterMistake> mistakes = refusal.mistakes();
    mistakes.stream().limit(MOST).forEach(mistake -> say(mistake.line()));
    String count = mistakes.size() == 1 ? "1 mistake" : mistakes.size() + " mistakes";
    String rest = mistakes.size() > MOST ? ", the first " + MOST + " of them above" : "";
    return Failure.usage(file + ": " + count + rest + "; nothing of this register is used");
  }

  private void say(String line) {
    err.println("thumbseal: " + Printable.line(file + ": " + line));
  }
}
