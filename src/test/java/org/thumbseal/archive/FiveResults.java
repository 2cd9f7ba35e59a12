package org.thumbseal.archive;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.thumbseal.json.Canonical;
import org.thumbseal.json.ExampleDocument;
import org.thumbseal.seal.LedgerPosition;
import org.thumbseal.seal.Seal;
import org.thumbseal.seal.Sha256;
import org.thumbseal.seal.SigningKey;
import org.thumbseal.seal.TrustStore;
import tools.jackson.databind.node.ObjectNode;

/**
 * A result directory as {@link Archive} writes it, and what is said of it.
 *
 * @param folder the directory
 * @param key that sealed it, and is trusted
 * @param documents the five, in order
 */
record FiveResults(Path folder, SigningKey key, List<Path> documents) {
  static final byte[] CAPTURE = "# thumbseal capture 1\n".getBytes(StandardCharsets.UTF_8);

  static FiveResults in(Path folder) throws ArchiveException {
    SigningKey key = SigningKey.generate();
    List<Path> documents = new ArrayList<>();
    try (Archive archive = Archive.open(folder, key)) {
      for (int i = 1; i <= 5; i++) {
        documents.add(archive.store(ExampleDocument.unsealed(i), CAPTURE).document());
      }
    }
    return new FiveResults(folder, key, documents);
  }

  Path document(int number) {
    return documents.get(number - 1);
  }

  static Path capture(Path document) {
    return document.resolveSibling(document.getFileName().toString().replace(".json", ".log"));
  }

  /**
   * A sixth document, with a capture that is there, sealed by a key for a place of one's choice.
   */
  ObjectNode another(LedgerPosition position, SigningKey by) {
    ObjectNode document = ExampleDocument.unsealed(99);
    ((ObjectNode) document.get("evidence"))
        .put("capture", capture(document(1)).getFileName().toString())
        .put("sha256", Sha256.hex(CAPTURE));
    return Seal.seal(document, position, by);
  }

  /** Puts a document among the others, under the name that is its own. */
  Path put(ObjectNode document) throws IOException {
    ResultName name = ResultName.of(document);
    Path file = folder.resolve(name.folder()).resolve(name.withIdDigits(8) + ResultName.DOCUMENT);
    return Files.writeString(file, Canonical.text(document) + "\n");
  }

  Verification verification() {
    return new Verification(TrustStore.of(key.verifyingKey()));
  }

  /** All that is said, in order, of the directory: the name of the file, what it is, the remark. */
  List<String> said() throws ArchiveException {
    List<String> said = new ArrayList<>();
    verification().directory(folder, outcome -> said.add(text(outcome)));
    return said;
  }

  /** The same without what is good. */
  List<String> odd() throws ArchiveException {
    return said().stream().filter(line -> !line.endsWith("trusted key: ")).toList();
  }

  private static String text(Outcome outcome) {
    String file = outcome.file().getFileName() + ": ";
    if (outcome instanceof Outcome.Answered answered) {
      return file + answered.answer().text() + ": " + answered.remark();
    }
    return outcome instanceof Outcome.Unreadable unreadable
        ? file + "unreadable: " + unreadable.reason()
        : file + "remark: " + ((Outcome.Remarked) outcome).remark();
  }
}
