package org.thumbseal.cli;

import java.io.PrintWriter;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.Callable;
import org.thumbseal.archive.ArchiveException;
import org.thumbseal.archive.StoredResults;
import org.thumbseal.json.Printable;
import org.thumbseal.report.Report;
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
          + " account. A folder of results gets an index page as well. Exit code 1: a seal is broken,"
          + " or a recording is missing or altered; the page says so."
    })
final class ReportCommand implements Callable<Integer> {
  /** Stretches of the width of a sheet; a printer shows no more. */
  private static final int STRETCHES = 700;

  @Spec private CommandSpec spec = CommandSpec.create();

  @Parameters(
      arity = "1..*",
      paramLabel = "RESULT|DIR",
      description =
          "results (*.json, sealed or from replay --json), captures (*.log), or folders of results")
  private List<Path> paths = List.of();

  @Option(
      names = {"-o", "--output"},
      paramLabel = "DIR",
      description = "where to write; default: the current folder. Needed for a folder of results")
  private Optional<Path> output = Optional.empty();

  @Option(
      names = "--index-only",
      description = "for a folder: the index with its small curves, no page of each result")
  private boolean indexOnly;

  @Mixin private ReportPages pages = new ReportPages();
  @Mixin private KeyOption key = new KeyOption();
  @Mixin private TrustOption trust = new TrustOption();

  private final Streams streams;
  private int worst = ExitCode.GOOD;

  ReportCommand(Streams streams) {
    this.streams = streams;
  }

  @Override
  public Integer call() {
    requireWhole();
    PrintWriter err = spec.commandLine().getErr();
    ProgressLine progress =
        new ProgressLine(err, StandardError.isSeenAt(streams.err()), System::nanoTime);
    ReportSubjects subjects =
        new ReportSubjects(trust.trusted(key.file()), line -> say(line, progress));
    ReportFolder folder = ReportFolder.at(output.orElse(Path.of("")));
    for (Path path : paths) {
      if (Files.isDirectory(path)) {
        all(path, subjects, folder, progress);
      } else {
        one(path, subjects, folder, progress);
      }
    }
    return worst;
  }

  private void requireWhole() {
    Optional<Path> directory = paths.stream().filter(Files::isDirectory).findFirst();
    if (directory.isPresent() && output.isEmpty()) {
      throw Failure.usage(directory.get() + ": is a folder; say where its pages go with -o DIR");
    }
    if (paths.stream().filter(Files::isDirectory).count() > 1) {
      throw Failure.usage("one folder at a time: each has an index.html of its own, so a -o DIR");
    }
    if (indexOnly && (directory.isEmpty() || !pages.arePages())) {
      throw Failure.usage(
          "--index-only is for the pages of a folder: name one, without --svg, --csv");
    }
  }

  private void one(Path path, ReportSubjects subjects, ReportFolder folder, ProgressLine progress) {
    each(path, subjects, progress, (subject, drawn) -> print(pages.write(subject, drawn, folder)));
  }

  private void all(Path path, ReportSubjects subjects, ReportFolder folder, ProgressLine progress) {
    try {
      List<Path> files = StoredResults.in(path);
      if (files.isEmpty()) {
        throw Failure.usage(path + ": holds no results");
      }
      ReportIndex index = new ReportIndex(path, folder, pages.arePages());
      for (int i = 0; i < files.size(); i++) {
        progress.show(i, files.size());
        each(
            files.get(i),
            subjects,
            progress,
            (subject, drawn) -> add(index, subject, drawn, folder));
      }
      progress.clear();
      finish(path, index);
    } catch (ArchiveException e) {
      throw Failure.machine(String.valueOf(e.getMessage()));
    }
  }

  private void add(ReportIndex index, ReportSubject subject, Report drawn, ReportFolder folder) {
    if (!indexOnly) {
      pages.write(subject, drawn, folder);
    }
    index.add(drawn, indexOnly ? Optional.empty() : Optional.of(pages.name(subject)));
  }

  private void finish(Path path, ReportIndex index) {
    if (index.isEmpty()) {
      throw Failure.notPassed(path + ": no result here is of that pump and time");
    }
    index.finish().ifPresent(this::print);
  }

  /** What is wrong with one file does not keep the others from their pages. */
  private void each(Path path, ReportSubjects subjects, ProgressLine progress, Taker taker) {
    try {
      for (ReportSubject subject : subjects.in(path)) {
        if (pages.wants(subject.report())) {
          taker.take(subject, subject.drawn(STRETCHES));
          tellFault(path, subject, progress);
        }
      }
    } catch (Failure e) {
      complain(e.exitCode(), String.valueOf(e.getMessage()), progress);
    }
  }

  private void tellFault(Path path, ReportSubject subject, ProgressLine progress) {
    if (!subject.fault().isEmpty()) {
      complain(ExitCode.NOT_PASSED, path + ": " + subject.fault() + "; the page says so", progress);
    }
  }

  private void complain(int code, String message, ProgressLine progress) {
    say(message, progress);
    worst = Math.max(worst, code);
  }

  private void say(String message, ProgressLine progress) {
    progress.clear();
    spec.commandLine().getErr().println("thumbseal: " + Printable.line(message));
  }

  private void print(Path file) {
    spec.commandLine().getOut().println(Printable.line(file.toString()));
  }

  /** Takes a result with its curve. */
  @FunctionalInterface
  private interface Taker {
    void take(ReportSubject subject, Report drawn);
  }
}
