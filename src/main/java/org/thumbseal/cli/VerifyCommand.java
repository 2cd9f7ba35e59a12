package org.thumbseal.cli;

import java.io.PrintWriter;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.concurrent.Callable;
import org.thumbseal.archive.ArchiveException;
import org.thumbseal.archive.DirectorySummary;
import org.thumbseal.archive.Outcome;
import org.thumbseal.archive.Verification;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;

/** Checks sealed results and their chain. */
@Command(
    name = "verify",
    description = {
      "Check sealed results and their chain.",
      "A directory is checked whole: every document, every capture, nothing missing. Exit code 0"
          + " only when every seal is good and by a trusted key.",
      "A result that was corrected is followed by a line for each correction, and by one for what"
          + " stands of it now."
    },
    mixinStandardHelpOptions = true)
final class VerifyCommand implements Callable<Integer> {
  @Spec private CommandSpec spec = CommandSpec.create();
  @Mixin private KeyOption key = new KeyOption();

  @Parameters(
      arity = "1..*",
      paramLabel = "FILE|DIR",
      description = "documents, or whole result directories")
  private List<Path> paths = List.of();

  @Mixin private TrustOption trust = new TrustOption();

  @Option(names = "--json", description = "print one line of JSON for each document and each fault")
  private boolean json;

  private final Streams streams;

  VerifyCommand(Streams streams) {
    this.streams = streams;
  }

  @Override
  public Integer call() {
    PrintWriter err = spec.commandLine().getErr();
    PrintWriter out = spec.commandLine().getOut();
    Verification verification = new Verification(trust.trusted(key.file()));
    VerifyReport report = json ? new JsonVerifyReport(out, err) : new TextVerifyReport(out, err);
    ProgressLine progress =
        new ProgressLine(err, !json && StandardError.isSeenAt(streams.err()), System::nanoTime);
    paths.forEach(path -> verify(path, verification, report, progress));
    return report.end();
  }

  private static void verify(
      Path path, Verification verification, VerifyReport report, ProgressLine progress) {
    if (!Files.isDirectory(path)) {
      if (CaptureFile.isOne(path)) {
        report.file(new Outcome.Unreadable(path, CaptureFile.insteadOfDocument(path)));
        return;
      }
      report.file(verification.file(path));
      verification.corrected(path).ifPresent(report::file);
      return;
    }
    try {
      DirectorySummary summary =
          verification.directory(path, outcome -> told(outcome, report, progress), progress::show);
      progress.clear();
      report.directory(summary);
    } catch (ArchiveException e) {
      progress.clear();
      report.refused(String.valueOf(e.getMessage()));
    }
  }

  private static void told(Outcome outcome, VerifyReport report, ProgressLine progress) {
    progress.clear();
    report.member(outcome);
  }
}
