package org.thumbseal.cli;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Consumer;
import org.thumbseal.archive.Archive;
import org.thumbseal.archive.ArchiveException;
import org.thumbseal.archive.Corrections;
import org.thumbseal.archive.Outcome;
import org.thumbseal.archive.StoredCapture;
import org.thumbseal.archive.Verification;
import org.thumbseal.json.CorrectionTree;
import org.thumbseal.json.DocumentView;
import org.thumbseal.json.JsonGate;
import org.thumbseal.json.JsonRefusedException;
import org.thumbseal.json.Printable;
import org.thumbseal.json.ResultTree;
import org.thumbseal.pipeline.GradingSettings;
import org.thumbseal.record.ResultDocument;
import org.thumbseal.report.Report;
import org.thumbseal.report.SealFacts;
import org.thumbseal.seal.LedgerEntry;
import org.thumbseal.seal.Seal;
import org.thumbseal.seal.SealAnswer;
import org.thumbseal.seal.TrustStore;
import tools.jackson.databind.node.ObjectNode;

/** Reads results for their pages: documents, sealed or not, and captures. */
final class ReportSubjects {
  private final TrustStore trust;
  private final Verification verification;
  private final Consumer<String> remarks;
  private final Map<Path, Corrections> corrections = new HashMap<>();

  ReportSubjects(TrustStore trust, Consumer<String> remarks) {
    this.trust = trust;
    this.verification = new Verification(trust);
    this.remarks = remarks;
  }

  /** All results in a file, in order. */
  List<ReportSubject> in(Path file) {
    return CaptureFile.isOne(file) ? graded(file) : documents(file);
  }

  /** As a replay without options does. */
  private List<ReportSubject> graded(Path file) {
    List<ReportSubject> subjects = new ArrayList<>();
    List<ResultDocument> results =
        new RecordFile(file).grade(Optional.empty(), GradingSettings.DEFAULT);
    if (results.isEmpty()) {
      throw Failure.notPassed(file + ": no test in it (the inlet was never blocked)");
    }
    for (ResultDocument result : results) {
      ObjectNode tree = ResultTree.of(result);
      DocumentView view = DocumentView.of(tree);
      Report report =
          new Report(view, SealFacts.NONE, "").standing(CorrectionTree.standing(tree), List.of());
      String number = results.size() > 1 ? "-" + (subjects.size() + 1) : "";
      subjects.add(
          new ReportSubject(
              stem(file) + number, report, Optional.of(new ReportRecording(file, view)), ""));
    }
    return subjects;
  }

  private List<ReportSubject> documents(Path file) {
    try {
      List<ObjectNode> documents = read(file);
      List<ReportSubject> subjects = new ArrayList<>();
      for (ObjectNode document : documents) {
        String number = documents.size() > 1 ? "-" + (subjects.size() + 1) : "";
        subjects.add(subject(file, document, stem(file) + number));
      }
      return subjects;
    } catch (JsonRefusedException e) {
      throw Failure.usage(file + ": " + e.getMessage());
    }
  }

  /** One document, or a line for each as {@code replay --json} prints them. */
  private static List<ObjectNode> read(Path file) throws JsonRefusedException {
    try {
      return List.of(JsonGate.read(file));
    } catch (JsonRefusedException e) {
      List<ObjectNode> all = new ArrayList<>();
      for (String line : lines(file, e)) {
        all.add(JsonGate.read(line.getBytes(StandardCharsets.UTF_8)));
      }
      return all;
    }
  }

  private static List<String> lines(Path file, JsonRefusedException whole)
      throws JsonRefusedException {
    try {
      boolean small = Files.isRegularFile(file) && Files.size(file) <= JsonGate.LARGEST;
      List<String> lines =
          small
              ? Files.readAllLines(file, StandardCharsets.UTF_8).stream()
                  .filter(line -> !line.isBlank())
                  .toList()
              : List.of();
      if (lines.size() < 2 || !lines.get(0).endsWith("}")) {
        throw whole;
      }
      return lines;
    } catch (IOException e) {
      throw whole;
    }
  }

  private ReportSubject subject(Path file, ObjectNode document, String stem)
      throws JsonRefusedException {
    requireResult(document);
    DocumentView view = DocumentView.of(document);
    StoredCapture capture = StoredCapture.beside(file, document);
    SealFacts seal = seal(file, document);
    Report report = corrected(file, document, new Report(view, seal, capture.fault()));
    return new ReportSubject(
        stem, report, capture.file().map(f -> new ReportRecording(f, view)), fault(seal, capture));
  }

  private Report corrected(Path file, ObjectNode document, Report report) {
    Optional<Corrections> known = corrections(file);
    return report.standing(
        known.map(c -> c.standing(document)).orElseGet(() -> CorrectionTree.standing(document)),
        known
            .map(c -> c.of(document).stream().map(CorrectionText::line).toList())
            .orElse(List.of()));
  }

  private static void requireResult(ObjectNode document) throws JsonRefusedException {
    if (!document.path("kind").asString("").equals(ResultDocument.KIND)) {
      throw new JsonRefusedException(
          "is not the result of a test but '"
              + Printable.line(document.path("kind").asString(""))
              + "'; a correction shows on the page of the result that it corrects");
    }
  }

  private static String fault(SealFacts seal, StoredCapture capture) {
    boolean bad = seal.state() == SealFacts.State.BROKEN || seal.state() == SealFacts.State.CHAIN;
    return bad ? seal.remark() : capture.fault();
  }

  private SealFacts seal(Path file, ObjectNode document) {
    if (!document.has(Seal.SIGNATURE)) {
      return SealFacts.NONE;
    }
    Optional<LedgerEntry> entry = LedgerEntry.read(document);
    Optional<String> kid = entry.map(LedgerEntry::kid);
    Optional<String> digest =
        Optional.of(entry.map(LedgerEntry::digest).orElseGet(() -> Seal.digest(document)));
    return verification.file(file) instanceof Outcome.Answered a
        ? new SealFacts(state(a.answer()), a.signer(), a.remark(), kid, digest)
        : new SealFacts(SealFacts.State.BROKEN, "", "cannot be checked", kid, digest);
  }

  private static SealFacts.State state(SealAnswer answer) {
    return switch (answer) {
      case TRUSTED_KEY -> SealFacts.State.TRUSTED;
      case UNKNOWN_KEY -> SealFacts.State.UNKNOWN;
      case BROKEN_CHAIN -> SealFacts.State.CHAIN;
      case BROKEN_SEAL -> SealFacts.State.BROKEN;
    };
  }

  /** Those of its directory, read once; none where it lies in no result directory. */
  private Optional<Corrections> corrections(Path file) {
    return Archive.directoryOf(file)
        .map(directory -> corrections.computeIfAbsent(directory, this::corrected));
  }

  private Corrections corrected(Path directory) {
    try {
      return Corrections.in(directory, trust, remarks);
    } catch (ArchiveException e) {
      throw Failure.machine(String.valueOf(e.getMessage()));
    }
  }

  static String stem(Path file) {
    return file.getFileName().toString().replaceFirst("\\.(json|log|csv|txt)$", "");
  }
}
