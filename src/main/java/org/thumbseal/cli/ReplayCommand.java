package org.thumbseal.cli;

import java.io.PrintWriter;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.concurrent.Callable;
import org.jspecify.annotations.Nullable;
import org.thumbseal.archive.Archive;
import org.thumbseal.archive.StoredResult;
import org.thumbseal.calibration.Calibrations;
import org.thumbseal.capture.CaptureFormatException;
import org.thumbseal.capture.Columns;
import org.thumbseal.grade.Verdict;
import org.thumbseal.json.Canonical;
import org.thumbseal.json.Printable;
import org.thumbseal.json.ResultTree;
import org.thumbseal.pipeline.GradingSettings;
import org.thumbseal.record.ResultDocument;
import org.thumbseal.report.ExplainText;
import org.thumbseal.report.ResultText;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;

/** Grades recorded captures, and the tables of other programs. */
@Command(
    name = "replay",
    mixinStandardHelpOptions = true,
    description = "Grade recorded captures, or tables of time and pressure.")
final class ReplayCommand implements Callable<Integer> {
  @Spec private CommandSpec spec = CommandSpec.create();

  @Parameters(
      arity = "1..*",
      paramLabel = "FILE",
      description = "captures, tables with --columns, or bare lines of a board with --format")
  private List<Path> files = new ArrayList<>();

  @Option(names = "--json", description = "one line of JSON per test, and nothing else")
  private boolean json;

  @Option(
      names = "--explain",
      description =
          "after each result how its values were reached, their uncertainty budgets, and how it was"
              + " decided: tables to check by hand")
  private boolean explain;

  @Option(
      names = "--columns",
      paramLabel = "SPEC",
      description =
          "where a table has time and pressure:"
              + " time=<name or number>[:unit],pressure=<name or number>[:unit]"
              + "[:gauge|:absolute|:vacuum]")
  private @Nullable String columns;

  @Mixin private GradingOptions grading = new GradingOptions();
  @Mixin private LineOptions lines = new LineOptions();
  @Mixin private ArchiveOptions storing = new ArchiveOptions();
  @Mixin private CalibrationOptions calibrations = new CalibrationOptions();

  private final Set<String> missed = new HashSet<>();
  private int worst = ExitCode.GOOD;

  @Override
  public Integer call() {
    requireOneForm();
    GradingSettings said = lines.into(grading.settings(spec.commandLine().getErr()));
    Optional<Columns> table = parseColumns();
    Optional<Archive> archive = storing.open(spec.commandLine().getErr());
    try {
      GradingSettings settings = said.withSensor(s -> s.withCalibrations(known()));
      files.forEach(file -> replay(file, table, settings, archive));
    } finally {
      archive.ifPresent(storing::close);
    }
    return worst;
  }

  private Calibrations known() {
    return calibrations.load(storing.results(), storing.keyFile(), spec.commandLine().getErr());
  }

  private void requireOneForm() {
    if (columns != null && lines.format().isPresent()) {
      throw Failure.usage(
          "--columns is for tables and --format for lines as a board prints them: give one of them");
    }
    if (json && explain) {
      throw Failure.usage(
          "--explain is for people and --json for programs: give one of them; the document holds the"
              + " budgets anyway");
    }
  }

  private Optional<Columns> parseColumns() {
    String text = columns;
    if (text == null) {
      return Optional.empty();
    }
    try {
      return Optional.of(Columns.parse(text));
    } catch (CaptureFormatException e) {
      throw Failure.usage(String.valueOf(e.getMessage()));
    }
  }

  /** One file; what is wrong with it does not keep the others from being graded. */
  private void replay(
      Path file, Optional<Columns> table, GradingSettings settings, Optional<Archive> archive) {
    try {
      RecordFile record = new RecordFile(file);
      record.formatRemark(settings).ifPresent(remark -> complain(ExitCode.GOOD, remark));
      List<ResultDocument> results = record.grade(table, settings);
      if (results.isEmpty()) {
        complain(ExitCode.NOT_PASSED, file + ": no test in it (the inlet was never blocked)");
      }
      for (ResultDocument result : results) {
        print(result);
        remark(result, settings);
        archive.ifPresent(a -> tell(storing.store(a, result, file)));
        note(result.grade().verdict() == Verdict.PASS ? ExitCode.GOOD : ExitCode.NOT_PASSED);
      }
    } catch (Failure e) {
      complain(e.exitCode(), String.valueOf(e.getMessage()));
    } catch (RuntimeException e) {
      complain(ExitCode.MACHINE, file + ": an error of this program, please report it: " + e);
    }
  }

  private void remark(ResultDocument result, GradingSettings settings) {
    result
        .asset()
        .filter(id -> settings.pumps().misses(id) && missed.add(id))
        .ifPresent(id -> say(id + " is not in the register; it is graded all the same"));
  }

  private void say(String message) {
    spec.commandLine().getErr().println("thumbseal: " + Printable.line(message));
  }

  /** The same evidence has the same id: graded again, even by other criteria, it is not added. */
  private void tell(StoredResult stored) {
    spec.commandLine()
        .getErr()
        .println(
            "thumbseal: "
                + Printable.line(
                    stored.added()
                        ? "sealed in " + stored.document()
                        : "this test is stored already and stays as it is: " + stored.document()));
  }

  private void print(ResultDocument result) {
    PrintWriter out = spec.commandLine().getOut();
    if (json) {
      out.println(Printable.json(Canonical.text(ResultTree.of(result))));
    } else {
      print(ResultText.lines(result));
      if (explain) {
        print(ExplainText.lines(result));
        out.println();
      }
    }
  }

  private void print(List<String> lines) {
    PrintWriter out = spec.commandLine().getOut();
    lines.forEach(line -> out.println(Printable.line(line)));
  }

  private void complain(int code, String message) {
    say(message);
    note(code);
  }

  private void note(int code) {
    worst = Math.max(worst, code);
  }
}
