package org.thumbseal.cli;

import java.io.IOException;
import java.io.PrintWriter;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.Callable;
import org.thumbseal.capture.CaptureFormatException;
import org.thumbseal.json.Printable;
import org.thumbseal.report.CurvePicture;
import org.thumbseal.report.Report;
import org.thumbseal.report.ReportPage;
import org.thumbseal.report.SamplesCsv;
import org.thumbseal.report.TestShape;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;

/** Makes a page of each result. */
@Command(
    name = "report",
    mixinStandardHelpOptions = true,
    description = {
      "Make a page of a result: verdict, curve, values and limits, findings, seal.",
      "It prints on one sheet of A4 from any browser, and loads nothing. Corrections are taken into"
          + " account. Exit code 1: a seal is broken, or a recording is missing or altered; the page"
          + " says so."
    })
final class ReportCommand implements Callable<Integer> {
  /** Stretches of the width of a sheet; a printer shows no more. */
  private static final int STRETCHES = 700;

  @Spec private CommandSpec spec = CommandSpec.create();

  @Parameters(
      arity = "1..*",
      paramLabel = "RESULT",
      description = "results (*.json, sealed or from replay --json), or captures (*.log)")
  private List<Path> paths = List.of();

  @Option(
      names = {"-o", "--output"},
      paramLabel = "DIR",
      description = "where to write; default: the current folder")
  private Path output = Path.of("");

  @Option(names = "--svg", description = "the curve alone, as SVG")
  private boolean svg;

  @Option(
      names = "--csv",
      description = "the samples alone, after zero and calibration, with their phases")
  private boolean csv;

  @Mixin private KeyOption key = new KeyOption();
  @Mixin private TrustOption trust = new TrustOption();

  private int worst = ExitCode.GOOD;

  @Override
  public Integer call() {
    ReportSubjects subjects = new ReportSubjects(trust.trusted(key.file()), this::say);
    ReportFolder folder = ReportFolder.at(output);
    paths.forEach(path -> report(path, subjects, folder));
    return worst;
  }

  /** One file; what is wrong with it does not keep the others from their pages. */
  private void report(Path path, ReportSubjects subjects, ReportFolder folder) {
    try {
      for (ReportSubject subject : subjects.in(path)) {
        write(subject, folder)
            .forEach(file -> spec.commandLine().getOut().println(Printable.line(file.toString())));
        if (!subject.fault().isEmpty()) {
          complain(ExitCode.NOT_PASSED, path + ": " + subject.fault() + "; the page says so");
        }
      }
    } catch (Failure e) {
      complain(e.exitCode(), String.valueOf(e.getMessage()));
    }
  }

  private List<Path> write(ReportSubject subject, ReportFolder folder) {
    List<Path> files = new ArrayList<>();
    if (csv) {
      files.add(folder.write(subject.stem() + ".csv", samples(subject)));
    }
    if (svg || !csv) {
      Report report = subject.drawn(STRETCHES);
      files.add(
          svg
              ? folder.write(subject.stem() + ".svg", CurvePicture.file(report))
              : folder.write(subject.stem() + ".html", ReportPage.html(report)));
    }
    return files;
  }

  private static String samples(ReportSubject subject) {
    ReportRecording recording =
        subject
            .recording()
            .orElseThrow(
                () -> Failure.notPassed(subject.stem() + ": no samples: " + subject.fault()));
    StringBuilder text = new StringBuilder();
    try {
      recording.read(new SamplesCsv(new TestShape(subject.report().document()), text));
      return text.toString();
    } catch (IOException | CaptureFormatException e) {
      throw Failure.usage(recording.file() + ": " + e.getMessage());
    }
  }

  private void complain(int code, String message) {
    say(message);
    worst = Math.max(worst, code);
  }

  private void say(String message) {
    PrintWriter err = spec.commandLine().getErr();
    err.println("thumbseal: " + Printable.line(message));
  }
}
