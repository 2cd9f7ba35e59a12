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

/** Prints one line per change of phase and per verdict; notices go to standard error. */
class BenchPrinter implements BenchListener {
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
        String.format(
            Locale.ROOT,
            "%s: %-7s at %8.2f s   %s",
            port,
            phase.phase().code(),
            phase.seconds(),
            whatNow(phase.phase())));
  }

  private static String whatNow(Phase phase) {
    return switch (phase) {
      case IDLE -> "inlet open: switch the pump on, control at maximum";
      case OPEN -> "pump running: block the jar inlet and hold";
      case RISE -> "inlet blocked: hold";
      case HOLD -> "the vacuum stands still: let go";
      case RELEASE -> "inlet open again";
      case DECAY -> "pump off, inlet still blocked: let go";
    };
  }

  @Override
  public void result(String port, ResultDocument result, Path file) {
    print(out, port + ": " + ResultText.oneLine(result) + "  " + file);
  }

  @Override
  public void notice(String text) {
    print(err, "thumbseal: " + text);
  }

  private static synchronized void print(PrintWriter writer, String line) {
    writer.println(Printable.line(line));
    writer.flush();
  }
}
