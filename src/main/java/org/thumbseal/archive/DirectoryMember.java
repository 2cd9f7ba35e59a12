package org.thumbseal.archive;

import java.nio.file.Files;
import java.nio.file.LinkOption;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.thumbseal.json.JsonRefusedException;
import org.thumbseal.seal.SealAnswer;
import org.thumbseal.seal.SealVerifier;

/**
 * What is named as a document in a result directory, checked on its own.
 *
 * @param name of the file
 * @param check what it came to; empty when it is no document
 * @param refusal why it is none, in half a sentence
 */
record DirectoryMember(String name, Optional<DocumentCheck> check, String refusal) {
  static DirectoryMember of(Path folder, String name, SealVerifier verifier) {
    try {
      Path file = folder.resolve(name);
      checkKind(file);
      return new DirectoryMember(name, Optional.of(DocumentCheck.of(file, verifier)), "");
    } catch (JsonRefusedException e) {
      return new DirectoryMember(name, Optional.empty(), String.valueOf(e.getMessage()));
    }
  }

  /** What there is to say of it before its place in the chain is known. */
  List<Outcome> remarks(Path folder) {
    Path file = folder.resolve(name);
    return check
        .map(c -> remarks(file, c))
        .orElseGet(() -> List.of(new Outcome.Unreadable(file, refusal)));
  }

  static Outcome chainFault(Path path, String text) {
    return new Outcome.Answered(path, SealAnswer.BROKEN_CHAIN, "", text);
  }

  private static List<Outcome> remarks(Path file, DocumentCheck check) {
    List<Outcome> remarks = new ArrayList<>();
    SealAnswer answer = check.answer(true);
    if (answer == SealAnswer.BROKEN_SEAL) {
      remarks.add(new Outcome.Answered(file, answer, check.seal().signer(), check.remark()));
    } else if (check.entry().isEmpty()) {
      remarks.add(chainFault(file, "has no place in a ledger"));
    }
    String name = check.nameRemark(file);
    if (!name.isEmpty()) {
      boolean fault = check.isHiddenAt(file);
      remarks.add(fault ? chainFault(file, name) : new Outcome.Remarked(file, name));
    }
    return remarks;
  }

  /** What is not a file of this directory could be anything, and gone tomorrow. */
  static void checkKind(Path file) throws JsonRefusedException {
    if (Files.isSymbolicLink(file)) {
      throw new JsonRefusedException(
          "is a symbolic link, which is not followed; put the document itself there");
    }
    boolean known =
        Files.isRegularFile(file, LinkOption.NOFOLLOW_LINKS)
            || Files.isDirectory(file)
            || Files.notExists(file);
    if (!known) {
      throw new JsonRefusedException("is a device or a pipe, not a document");
    }
  }
}
