package org.thumbseal.archive;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import org.jspecify.annotations.Nullable;
import tools.jackson.databind.node.ObjectNode;

/**
 * A document, and the capture it was made from if there is one, on their way to the disk. Unless it
 * is finished, it leaves nothing.
 */
final class Write implements AutoCloseable {
  private final @Nullable Path temporaryCapture;
  private final String captureDigest;
  private final Path capture;
  private final Path document;

  /**
   * @param base path of both files without their extension
   */
  Write(Path temporaryCapture, String captureDigest, Path base) {
    this.temporaryCapture = temporaryCapture;
    this.captureDigest = captureDigest;
    this.capture = base.resolveSibling(base.getFileName() + ResultName.CAPTURE);
    this.document = base.resolveSibling(base.getFileName() + ResultName.DOCUMENT);
  }

  /**
   * A document without a capture.
   *
   * @param base path of the file without its extension
   */
  Write(Path base) {
    this.temporaryCapture = null;
    this.captureDigest = "";
    this.capture = base;
    this.document = base.resolveSibling(base.getFileName() + ResultName.DOCUMENT);
  }

  /** A copy of the document that names the capture, if there is one, as its evidence. */
  ObjectNode evidence(ObjectNode document) {
    ObjectNode copy = document.deepCopy();
    if (temporaryCapture == null) {
      return copy;
    }
    ObjectNode evidence =
        copy.get("evidence") instanceof ObjectNode there ? there : copy.putObject("evidence");
    String named = evidence.path("sha256").asString(captureDigest);
    if (!named.equals(captureDigest)) {
      throw new IllegalArgumentException("the document was not made from this capture");
    }
    evidence.put("capture", capture.getFileName().toString()).put("sha256", captureDigest);
    return copy;
  }

  /**
   * Makes both files appear, the capture first, and gives the document's. Either the document is
   * there at the end, or this throws.
   */
  Path finish(String text) throws IOException {
    Path temporary = Durable.temporary(document);
    try {
      Durable.write(temporary, text);
      if (temporaryCapture != null) {
        Durable.rename(temporaryCapture, capture);
      }
      renameDocument(temporary);
      return document;
    } finally {
      Durable.tidyAway(temporary);
    }
  }

  /** A shared or failing disk may do what it is told and then say that it did not. */
  private void renameDocument(Path temporary) throws IOException {
    try {
      Durable.rename(temporary, document);
    } catch (IOException e) {
      if (Files.exists(temporary) || !Files.exists(document)) {
        throw e;
      }
    }
  }

  @Override
  public void close() throws IOException {
    if (temporaryCapture != null) {
      Durable.tidyAway(temporaryCapture);
    }
  }
}
