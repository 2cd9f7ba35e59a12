package org.thumbseal.exchange;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Collection;
import java.util.List;
import java.util.Optional;
import java.util.function.Consumer;
import org.thumbseal.archive.Archive;
import org.thumbseal.archive.ArchiveException;
import org.thumbseal.archive.Corrections;
import org.thumbseal.archive.Outcome;
import org.thumbseal.archive.StoredCapture;
import org.thumbseal.archive.Verification;
import org.thumbseal.json.CorrectionReader;
import org.thumbseal.json.DocumentView;
import org.thumbseal.json.JsonGate;
import org.thumbseal.json.JsonRefusedException;
import org.thumbseal.seal.LedgerEntry;
import org.thumbseal.seal.SealAnswer;
import org.thumbseal.seal.SealCheck;
import org.thumbseal.seal.SealVerifier;
import org.thumbseal.seal.TrustStore;
import tools.jackson.databind.node.ObjectNode;

/** Reads results with what their seals came to and how they were corrected. */
public final class ResultReader {
  private final TrustStore trust;
  private final Verification verification;
  private final SealVerifier verifier;
  private final Consumer<String> remarks;
  private Corrections corrections = Corrections.together(List.of());

  /**
   * A reader that knows no corrections yet.
   *
   * @param remarks is told a line about each correction that cannot be used
   */
  public ResultReader(TrustStore trust, Consumer<String> remarks) {
    this.trust = trust;
    this.verification = new Verification(trust);
    this.verifier = new SealVerifier(trust);
    this.remarks = remarks;
  }

  /**
   * Takes in the corrections that lie in these directories. A copy of a result in one is corrected
   * by what lies in another.
   *
   * @throws ArchiveException if one of them cannot be read
   */
  public void correctedBy(Collection<Path> directories) throws ArchiveException {
    List<Corrections> all = new ArrayList<>();
    for (Path directory : directories) {
      all.add(Corrections.in(directory, trust, remarks));
    }
    corrections = Corrections.together(all);
  }

  /** Where the corrections of a result lie: its result directory, else the folder it lies in. */
  public static Path around(Path file) {
    Path folder = file.toAbsolutePath().normalize().getParent();
    return Archive.directoryOf(file).orElse(folder == null ? Path.of("") : folder);
  }

  /**
   * Reads and checks a file: its seal, the capture beside it if there is one, its place.
   *
   * @throws ResultRefused if it cannot be read, or is no result
   */
  public SealedResult read(Path file) throws ResultRefused {
    ObjectNode document = open(file);
    boolean capture = StoredCapture.beside(file, document).file().isPresent();
    return result(file, document, verification.file(file), capture);
  }

  /**
   * Reads a file of which it is known what its check came to. Its seal is checked again: what is
   * taken is what was read now.
   *
   * @throws ResultRefused if it cannot be read, or is no result
   */
  SealedResult read(Path file, Outcome known) throws ResultRefused {
    // A directory that was checked whole has it, or the answer says so.
    return result(file, open(file), known, true);
  }

  private SealedResult result(Path file, ObjectNode document, Outcome known, boolean capture)
      throws ResultRefused {
    return new SealedResult(
        file,
        DocumentView.of(document),
        corrections.standing(document),
        corrections.of(document),
        seal(document, known),
        capture);
  }

  private static ObjectNode open(Path file) throws ResultRefused {
    try {
      ObjectNode document = JsonGate.read(file);
      refuseCorrection(document);
      return document;
    } catch (JsonRefusedException e) {
      throw ResultRefused.unreadable(String.valueOf(e.getMessage()));
    }
  }

  private static void refuseCorrection(ObjectNode document) throws ResultRefused {
    if (CorrectionReader.isCorrection(document)) {
      throw ResultRefused.because(
          "is a correction; take in the result again that it corrects"
              + Optional.ofNullable(document.at("/corrects/file").asString(null))
                  .map(name -> ", " + name)
                  .orElse(""));
    }
  }

  private KnownSeal seal(ObjectNode document, Outcome known) throws ResultRefused {
    SealCheck check = verifier.check(document);
    if (!(known instanceof Outcome.Answered answered)) {
      throw ResultRefused.unreadable(
          known instanceof Outcome.Unreadable unreadable ? unreadable.reason() : "has no answer");
    }
    SealAnswer answer = answered.answer().or(check.answer());
    String remark = answered.remark().isEmpty() ? check.reason() : answered.remark();
    return new KnownSeal(answer, check.signer(), remark, LedgerEntry.read(document));
  }
}
