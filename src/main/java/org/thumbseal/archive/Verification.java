package org.thumbseal.archive;

import java.io.IOException;
import java.nio.file.Path;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Consumer;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.thumbseal.json.CorrectionReader;
import org.thumbseal.json.JsonGate;
import org.thumbseal.json.JsonRefusedException;
import org.thumbseal.record.Correction.Subject;
import org.thumbseal.seal.LedgerEntry;
import org.thumbseal.seal.Seal;
import org.thumbseal.seal.SealAnswer;
import org.thumbseal.seal.SealVerifier;
import org.thumbseal.seal.TrustStore;
import tools.jackson.databind.node.ObjectNode;

/**
 * Checks sealed documents, one or a whole directory, without ever writing. Memory grows with the
 * number of documents in a directory by about 200 bytes each, never with their size.
 */
public final class Verification {
  private final SealVerifier verifier;
  private final Map<Path, Neighbourhood> neighbourhoods = new HashMap<>();

  /** A verification that trusts these keys. */
  public Verification(TrustStore trust) {
    this.verifier = new SealVerifier(trust);
  }

  /**
   * Checks one document: its seal, the capture beside it if it is there, and, when it lies in a
   * result directory, that it stands where it belongs in its chain and under its own name.
   */
  public Outcome file(Path file) {
    try {
      DocumentCheck check = DocumentCheck.of(file, verifier);
      SealAnswer answer = check.answer(false);
      String fault = answer == SealAnswer.BROKEN_SEAL ? "" : chainFault(file, check);
      String signer = check.seal().signer();
      return fault.isEmpty()
          ? new Outcome.Answered(file, answer, signer, remark(file, check))
          : new Outcome.Answered(file, SealAnswer.BROKEN_CHAIN, signer, fault);
    } catch (JsonRefusedException e) {
      return new Outcome.Unreadable(file, String.valueOf(e.getMessage()));
    } catch (IOException e) {
      return new Outcome.Unreadable(file, "its directory cannot be read: " + e.getMessage());
    }
  }

  /**
   * Checks a result directory: every document, every capture, and every chain up to the end that
   * {@code head.json} names. Given the folder of a year, it checks the directory around it, because
   * chains run through all years.
   *
   * @param report is told of every document once, of what is missing, and what else is worth
   *     knowing: what single files come to by folder and name, then each chain by number
   * @throws ArchiveException if the directory cannot be read or holds no documents
   */
  public DirectorySummary directory(Path path, Consumer<Outcome> report) throws ArchiveException {
    return directory(path, report, (done, all) -> {});
  }

  /**
   * As {@link #directory(Path, Consumer)}, and says how far it has come. Both are told in the
   * calling thread.
   *
   * @throws ArchiveException if the directory cannot be read or holds no documents
   */
  public DirectorySummary directory(
      Path path, Consumer<Outcome> report, VerificationProgress progress) throws ArchiveException {
    ResultDirectory directory = root(path);
    try {
      if (!directory.hasHead() && directory.countDocuments() == 0) {
        throw new ArchiveException(path + ": holds no results");
      }
      return new DirectoryCheck(directory, verifier, report).run(progress);
    } catch (IOException e) {
      throw new ArchiveException(path + ": cannot be read: " + e.getMessage());
    }
  }

  /**
   * What is known of a result in its directory beyond its own answer: that it was corrected. Given
   * a correction, the same of the result that it corrects. Empty where there is nothing to tell.
   */
  public Optional<Outcome> corrected(Path file) {
    try {
      ObjectNode document = JsonGate.read(file);
      Optional<ResultDirectory> directory = ResultDirectory.around(file);
      return directory.isEmpty() ? Optional.empty() : corrected(file, document, directory.get());
    } catch (JsonRefusedException | IOException e) {
      return Optional.empty();
    }
  }

  private Optional<Outcome> corrected(Path file, ObjectNode document, ResultDirectory directory)
      throws JsonRefusedException, IOException {
    String digest = Seal.digest(document);
    Path result = file;
    if (CorrectionReader.isCorrection(document)) {
      Subject subject = CorrectionReader.read(document).corrects();
      digest = subject.digest();
      Optional<Path> found = new SubjectFinder(directory, List.of(subject)).file(digest);
      if (found.isEmpty()) {
        return Optional.empty();
      }
      result = found.get();
    }
    List<SealedCorrection> known = neighbourhood(directory).corrections().get(digest);
    return known == null ? Optional.empty() : CorrectionCheck.corrected(result, known);
  }

  private static ResultDirectory root(Path path) {
    ResultDirectory itself = new ResultDirectory(path);
    Path parent = path.toAbsolutePath().normalize().getParent();
    if (itself.hasHead() || parent == null) {
      return itself;
    }
    ResultDirectory around = new ResultDirectory(parent);
    return around.hasHead() ? around : itself;
  }

  private String chainFault(Path file, DocumentCheck check) throws IOException {
    Path absolute = file.toAbsolutePath().normalize();
    if (absolute.endsWith(ResultDirectory.HEAD)) {
      return "";
    }
    Optional<LedgerEntry> entry = check.entry();
    if (entry.isEmpty()) {
      return "has no place in a ledger";
    }
    Optional<ResultDirectory> directory = ResultDirectory.around(absolute);
    if (directory.isEmpty()) {
      return "";
    }
    String fault =
        neighbourhood(directory.get()).fault(absolute, entry.get(), check.seal().answer());
    if (fault.isEmpty() && check.isHiddenAt(absolute)) {
      return check.nameRemark(absolute);
    }
    return fault.isEmpty() && check.facts().correction().isPresent()
        ? subjectFault(directory.get(), check.facts().correction().get())
        : fault;
  }

  /** Names mean something where results are stored; a copy elsewhere may be called anything. */
  private static String remark(Path file, DocumentCheck check) {
    Path absolute = file.toAbsolutePath().normalize();
    boolean stored = ResultDirectory.around(absolute).isPresent();
    return Stream.of(check.remark(), stored ? check.nameRemark(absolute) : "")
        .filter(text -> !text.isEmpty())
        .collect(Collectors.joining("; "));
  }

  private static String subjectFault(ResultDirectory directory, ObjectNode correction)
      throws IOException {
    try {
      Subject subject = CorrectionReader.read(correction).corrects();
      return new SubjectFinder(directory, List.of(subject)).fault(subject);
    } catch (JsonRefusedException e) {
      return String.valueOf(e.getMessage());
    }
  }

  private Neighbourhood neighbourhood(ResultDirectory directory) throws IOException {
    Neighbourhood known = neighbourhoods.get(directory.path());
    if (known == null) {
      known = new Neighbourhood(directory, verifier);
      neighbourhoods.put(directory.path(), known);
    }
    return known;
  }
}
