package org.thumbseal.feed;

import java.io.IOException;
import java.io.InputStream;
import java.nio.file.Files;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;
import java.util.Optional;
import org.thumbseal.archive.Sequenced;
import org.thumbseal.json.DocumentView;
import org.thumbseal.json.JsonGate;
import org.thumbseal.json.JsonRefusedException;
import org.thumbseal.seal.LedgerEntry;
import org.thumbseal.seal.SealVerifier;
import org.thumbseal.seal.TrustStore;
import tools.jackson.databind.node.ObjectNode;

/** A sealed document as it is sent: the very bytes of its file, and what is written on it. */
final class Parcel {
  private static final SealVerifier SEALS = new SealVerifier(TrustStore.of());
  private static final String NO_SUBJECT = "unassigned";

  private final byte[] bytes;
  private final Label label;

  /**
   * What the other side can read without opening it.
   *
   * @param id by which a second arrival is known
   * @param kind of document, such as {@code occlusion-test}
   * @param schema of the document
   * @param subject the pump it is about, or the sensor; as it stands after a correction
   */
  record Label(String id, String kind, String schema, String subject) {}

  Parcel(byte[] bytes, Label label) {
    this.bytes = bytes.clone();
    this.label = label;
  }

  byte[] bytes() {
    return bytes.clone();
  }

  int size() {
    return bytes.length;
  }

  Label label() {
    return label;
  }

  /**
   * Reads a document that is to be sent.
   *
   * @return empty where there is no such file any more
   * @throws IOException if it cannot be read now
   * @throws JsonRefusedException if it is not what was sealed at this place
   */
  static Optional<Parcel> read(Sequenced place) throws IOException, JsonRefusedException {
    try {
      byte[] bytes = bytes(place.file());
      ObjectNode document = JsonGate.read(bytes);
      require(document, place);
      return Optional.of(new Parcel(bytes, label(DocumentView.of(document))));
    } catch (NoSuchFileException e) {
      return Optional.empty();
    }
  }

  private static byte[] bytes(Path file) throws IOException {
    try (InputStream in = Files.newInputStream(file)) {
      return in.readNBytes(JsonGate.LARGEST + 1);
    }
  }

  private static void require(ObjectNode document, Sequenced place) throws JsonRefusedException {
    if (!SEALS.check(document).intact()) {
      throw new JsonRefusedException("its seal is broken; run verify on the directory");
    }
    boolean here =
        LedgerEntry.read(document)
            .filter(e -> e.kid().equals(place.kid()))
            .filter(e -> e.position().sequence() == place.sequence())
            .isPresent();
    if (!here) {
      throw new JsonRefusedException("has another place in the ledger than it had");
    }
  }

  private static Label label(DocumentView document) throws JsonRefusedException {
    String id = document.text("/id").orElse("");
    if (id.isEmpty()) {
      throw new JsonRefusedException("has no id");
    }
    String kind = document.text("/kind").filter(k -> !k.isEmpty()).orElse("document");
    return new Label(id, kind, document.text("/schema").orElse(""), subject(document));
  }

  private static String subject(DocumentView document) {
    return document
        .text("/change/asset/id")
        .or(() -> document.text("/was/asset/id"))
        .or(() -> document.text("/asset/id"))
        .or(() -> document.text("/sensor/id"))
        .filter(subject -> !subject.isEmpty())
        .orElse(NO_SUBJECT);
  }
}
