package org.thumbseal.cli;

import java.io.PrintWriter;
import java.nio.file.Path;
import java.util.Locale;
import org.thumbseal.daemon.BenchListener;
import org.thumbseal.json.Printable;
import org.thumbseal.phase.Phase;
import org.thumbseal.phase.PhaseEvent;
import org.thumbseal.record.ResultDocument;
import org.thumbseal.report.ResultText;

/**
 * Prints one line per change of phase and per verdict; where the file of the result does not fit
 * into the line, it stands below, indented. Notices go to standard error.
 */
class BenchPrinter implements BenchListener {
  private static final int WIDTH = 100;

  private final PrintWriter out;
  private final PrintWriter err;

  BenchPrinter(PrintWriter out, PrintWriter err) {
    this.out = out;
    this.err = err;
  }

  @Override
  public void phase(String port, PhaseEvent.Entered phase) {
    print(
        out,
        Printable.line(
            String.format(
                Locale.ROOT,
                "%s: %-7s at %8.2f s   %s",
                port,
                phase.phase().code(),
                phase.seconds(),
                whatNow(phase.phase()))));
  }

  /** What the person at the bench does in a phase. */
  String whatNow(Phase phase) {
    return switch (phase) {
      case IDLE -> "inlet open: after 5 s pump on, control at maximum";
      case OPEN -> "pump running: after 5 s block the jar inlet and hold";
      case RISE -> "inlet blocked: hold";
      case HOLD -> "the vacuum stands still: let go";
      case RELEASE -> "inlet open again";
      case DECAY -> "pump off, inlet still blocked: let go";
    };
  }

  @Override
  public void result(String port, ResultDocument result, Path file) {
    String line = Printable.line(port + ": " + ResultText.oneLine(result));
    String path = "  " + Printable.line(file.toString());
    boolean fits = line.length() + path.length() <= WIDTH;
    StringBuilder text = new StringBuilder(line);
    ResultText.why(result)
        .forEach(why -> text.append(System.lineSeparator()).append(Printable.line("  " + why)));
    boolean one = fits && text.length() == line.length();
    print(out, text + (one ? path : System.lineSeparator() + path));
  }

  @Override
  public void waiting(String port, ResultDocument result) {
    print(out, Printable.line(port + ": " + ResultText.oneLine(result) + ", not stored yet"));
  }

  @Override
  public void notice(String text) {
    print(err, Printable.line("thumbseal: " + text));
  }

  private static synchronized void print(PrintWriter writer, String line) {
    writer.println(line);
    writer.flush();
  }
}
