package org.thumbseal.exchange;

import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.function.Consumer;
import org.thumbseal.archive.ArchiveException;
import org.thumbseal.archive.Outcome;
import org.thumbseal.archive.StoredResults;
import org.thumbseal.archive.Verification;
import org.thumbseal.archive.VerificationProgress;
import org.thumbseal.json.DocumentView;
import org.thumbseal.json.JsonGate;
import org.thumbseal.json.JsonRefusedException;
import org.thumbseal.seal.SealAnswer;
import org.thumbseal.seal.TrustStore;

/**
 * The results to export: checked, and in the order of their beginning. Some hundred bytes are kept
 * of each, never a document.
 */
public final class ResultFiles {
  private final Verification verification;
  private final Consumer<String> faults;
  private final List<ResultFile> files = new ArrayList<>();
  private final Set<Path> directories = new LinkedHashSet<>();

  /**
   * None yet.
   *
   * @param faults is told a line about each directory that is not whole
   */
  public ResultFiles(TrustStore trust, Consumer<String> faults) {
    this.verification = new Verification(trust);
    this.faults = faults;
  }

  /**
   * Adds a file, or all results of a directory, which is checked whole.
   *
   * @throws ArchiveException if a directory cannot be read or holds no documents
   */
  public void add(Path path, VerificationProgress progress) throws ArchiveException {
    if (Files.isDirectory(path)) {
      addAll(path, progress);
    } else {
      add(verification.file(path));
      directories.add(ResultReader.around(path));
    }
  }

  private void addAll(Path directory, VerificationProgress progress) throws ArchiveException {
    Set<Path> results = new HashSet<>();
    StoredResults.in(directory).forEach(file -> results.add(absolute(file)));
    verification.directory(directory, outcome -> take(outcome, results), progress);
    results.forEach(file -> add(new Outcome.Unreadable(file, "went while it was to be read")));
    directories.add(ResultReader.around(directory.resolve("any")));
  }

  private void take(Outcome outcome, Set<Path> results) {
    boolean answered = outcome instanceof Outcome.Answered || outcome instanceof Outcome.Unreadable;
    if (answered && results.remove(absolute(outcome.file()))) {
      add(outcome);
    } else if (outcome instanceof Outcome.Answered fault && !isGood(fault)) {
      String remark = fault.remark().isEmpty() ? "" : ": " + fault.remark();
      faults.accept(fault.file() + ": " + fault.answer().text() + remark);
    }
  }

  private static boolean isGood(Outcome.Answered answered) {
    return answered.answer() == SealAnswer.TRUSTED_KEY;
  }

  private void add(Outcome outcome) {
    Optional<DocumentView> view = view(outcome);
    files.add(
        new ResultFile(
            outcome,
            view.flatMap(v -> v.text("/test/startedAt"))
                .flatMap(ResultFiles::instant)
                .orElse(Instant.MAX),
            view.flatMap(v -> v.text("/id")).orElse("")));
  }

  private static Optional<DocumentView> view(Outcome outcome) {
    try {
      return Optional.of(DocumentView.of(JsonGate.read(outcome.file())));
    } catch (JsonRefusedException e) {
      // Whoever reads it to export it says so.
      return Optional.empty();
    }
  }

  private static Optional<Instant> instant(String text) {
    try {
      return Optional.of(Member.instant(text));
    } catch (ResultRefused e) {
      return Optional.empty();
    }
  }

  private static Path absolute(Path file) {
    return file.toAbsolutePath().normalize();
  }

  /** Where the corrections of all of them lie. */
  public Set<Path> directories() {
    return Set.copyOf(directories);
  }

  /** All that were added, in order: by beginning, then id; those without a date last. */
  List<ResultFile> inOrder() {
    return files.stream().sorted(ResultFile.ORDER).toList();
  }
}
