package org.thumbseal.archive;

import java.io.IOException;
import java.nio.file.Path;
import java.util.HashMap;
import java.util.Map;
import java.util.Optional;
import java.util.function.Consumer;
import org.thumbseal.json.JsonRefusedException;
import org.thumbseal.seal.LedgerEntry;
import org.thumbseal.seal.SealAnswer;
import org.thumbseal.seal.SealVerifier;
import org.thumbseal.seal.TrustStore;

/**
 * Checks sealed documents, one or a whole directory, without ever writing. Memory grows with the
 * number of documents in a directory by a few hundred bytes each, never with their size.
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
   * result directory, that it stands where it belongs in its chain.
   */
  public Outcome file(Path file) {
    try {
      DocumentCheck check = DocumentCheck.of(file, verifier);
      SealAnswer answer = check.answer(false);
      String fault = answer == SealAnswer.BROKEN_SEAL ? "" : chainFault(file, check);
      String signer = check.seal().signer();
      return fault.isEmpty()
          ? new Outcome.Answered(file, answer, signer, check.remark())
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
   * @param report is told of every document once, and of what is missing
   * @throws ArchiveException if the directory cannot be read or holds no documents
   */
  public DirectorySummary directory(Path path, Consumer<Outcome> report) throws ArchiveException {
    ResultDirectory directory = root(path);
    try {
      if (directory.countDocuments() == 0 && !directory.hasHead()) {
        throw new ArchiveException(path + ": holds no results");
      }
      return new DirectoryCheck(directory, verifier, report).run();
    } catch (IOException e) {
      throw new ArchiveException(path + ": cannot be read: " + e.getMessage());
    }
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
    return directory.isEmpty() ? "" : neighbourhood(directory.get()).fault(absolute, entry.get());
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
