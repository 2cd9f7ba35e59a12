package org.thumbseal.index;

import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import org.thumbseal.archive.StoredDocument;
import org.thumbseal.json.JsonRefusedException;
import org.thumbseal.seal.LedgerEntry;
import org.thumbseal.seal.SealVerifier;
import tools.jackson.databind.node.ObjectNode;

/**
 * A file on its way into the index.
 *
 * @param folder in its results directory; empty for the directory itself
 * @param name of the file
 * @param kid of the key that is named as the signer
 * @param content what is to be written; absent where the file is kept out
 * @param fault why it is kept out, in half a sentence
 */
record Entry(
    String folder, String name, Optional<String> kid, Optional<Content> content, String fault) {
  /**
   * What a document says.
   *
   * @param id of the document
   * @param digest of the document
   * @param rows its own rows
   * @param corrects digest of the document that it corrects
   */
  record Content(String id, String digest, List<Row> rows, Optional<String> corrects) {}

  /** Reads and checks a file; for any thread. */
  static Entry read(Path results, String folder, String name, SealVerifier verifier) {
    StoredDocument stored = StoredDocument.read(results.resolve(folder).resolve(name), verifier);
    Optional<String> kid = stored.entry().map(e -> Texts.clean(e.kid()));
    if (stored.document().isEmpty() || stored.entry().isEmpty()) {
      return out(folder, name, kid, stored.fault());
    }
    try {
      Content content = content(stored.document().get(), stored.entry().get(), path(folder, name));
      return new Entry(folder, name, kid, Optional.of(content), "");
    } catch (JsonRefusedException e) {
      return out(folder, name, kid, String.valueOf(e.getMessage()));
    }
  }

  private static Content content(ObjectNode document, LedgerEntry entry, String path)
      throws JsonRefusedException {
    DocumentRows rows = new DocumentRows(document, entry, path);
    return new Content(rows.id(), entry.digest(), rows.all(), rows.corrects());
  }

  private static Entry out(String folder, String name, Optional<String> kid, String fault) {
    return new Entry(folder, name, kid, Optional.empty(), Texts.clean(fault));
  }

  static String path(String folder, String name) {
    return folder.isEmpty() ? name : folder + "/" + name;
  }

  String path() {
    return path(folder, name);
  }
}
