package org.thumbseal.archive;

import java.io.IOException;
import java.nio.file.Path;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.function.Consumer;
import org.thumbseal.json.JsonGate;
import org.thumbseal.json.JsonRefusedException;
import org.thumbseal.record.Correction.Subject;
import org.thumbseal.seal.SealAnswer;

/**
 * Keeps the corrections that are met while a directory is checked, and tells at the end which
 * results they correct. They are few, so they are kept whole.
 */
final class CorrectionCheck {
  private final ResultDirectory directory;
  private final Consumer<Outcome> report;
  private final Corrections corrections = new Corrections();

  CorrectionCheck(ResultDirectory directory, Consumer<Outcome> report) {
    this.directory = directory;
    this.report = report;
  }

  /** Takes the document if it is a correction; one whose own seal is broken has been told. */
  void see(Path file, DocumentCheck check) {
    if (check.facts().correction().isEmpty() || !check.seal().intact()) {
      return;
    }
    try {
      corrections.add(file, check.facts().correction().get(), check.seal());
    } catch (JsonRefusedException e) {
      report.accept(new Outcome.Unreadable(file, String.valueOf(e.getMessage())));
    }
  }

  /** Tells every corrected result, and every correction of what is not there. */
  void run() throws IOException {
    List<List<SealedCorrection>> groups =
        corrections.all().values().stream()
            .sorted(Comparator.comparing(CorrectionCheck::name))
            .toList();
    SubjectFinder finder = new SubjectFinder(directory, subjects(groups));
    for (List<SealedCorrection> group : groups) {
      for (SealedCorrection each : group) {
        String fault = finder.fault(each.correction().corrects());
        if (!fault.isEmpty()) {
          report.accept(
              new Outcome.Answered(each.file(), SealAnswer.BROKEN_CHAIN, each.signer(), fault));
        }
      }
      finder
          .file(group.get(0).correction().corrects().digest())
          .flatMap(file -> corrected(file, group))
          .ifPresent(report);
    }
  }

  private static String name(List<SealedCorrection> group) {
    return group.get(0).correction().corrects().file();
  }

  private static List<Subject> subjects(List<List<SealedCorrection>> groups) {
    return groups.stream().flatMap(List::stream).map(c -> c.correction().corrects()).toList();
  }

  static Optional<Outcome> corrected(Path result, List<SealedCorrection> corrections) {
    try {
      return Optional.of(
          new Outcome.Corrected(
              result, corrections, Corrections.standing(JsonGate.read(result), corrections)));
    } catch (JsonRefusedException e) {
      return Optional.empty();
    }
  }
}
