package org.thumbseal.archive;

import java.io.IOException;
import java.io.InputStream;
import java.nio.file.DirectoryIteratorException;
import java.nio.file.DirectoryStream;
import java.nio.file.Files;
import java.nio.file.Path;
import org.jspecify.annotations.Nullable;
import org.thumbseal.json.JsonGate;
import org.thumbseal.json.JsonRefusedException;
import org.thumbseal.seal.Sha256;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.node.ObjectNode;

/** Finds the files in which a result is, or will be, without ever choosing one that is taken. */
final class Placement {
  static final int FEWEST_ID_DIGITS = 8;

  /** The digest of no file. */
  private static final String NO_CAPTURE = "";

  private final ResultDirectory directory;
  private final StoredMarks marks;
  private final ResultName name;
  private final Path folder;

  Placement(ResultDirectory directory, StoredMarks marks, ResultName name) {
    this.marks = marks;
    this.directory = directory;
    this.name = name;
    this.folder = directory.path().resolve(name.folder());
  }

  /** The result with the same id as this document, if it is stored. */
  @Nullable StoredResult existing(ObjectNode document) throws IOException {
    if (!marks.contains(folder, name.mark())) {
      return null;
    }
    try (DirectoryStream<Path> files =
        Files.newDirectoryStream(folder, "*_" + name.mark() + "*" + ResultName.DOCUMENT)) {
      for (Path file : files) {
        StoredResult result = sameId(file, document.path("id"));
        if (result != null) {
          return result;
        }
      }
    } catch (DirectoryIteratorException e) {
      throw e.getCause();
    }
    return null;
  }

  /** The document is there now. */
  void written() throws IOException {
    marks.add(folder, name.mark());
  }

  /** Writes the capture under a temporary name and settles where everything goes. */
  Write write(CaptureSource capture) throws IOException {
    makeFolder();
    Path temporary = Durable.temporary(folder.resolve(name.id() + ResultName.CAPTURE));
    try (InputStream in = capture.open()) {
      String digest = Durable.write(temporary, in);
      return new Write(temporary, digest, free(digest));
    } catch (IOException | RuntimeException e) {
      Files.deleteIfExists(temporary);
      throw e;
    }
  }

  /** Settles where a document without a capture goes. */
  Write write() throws IOException {
    makeFolder();
    return new Write(free(NO_CAPTURE));
  }

  private void makeFolder() throws IOException {
    if (!Files.isDirectory(folder)) {
      Files.createDirectory(folder);
      Durable.forceFolder(directory.path());
    }
  }

  private @Nullable StoredResult sameId(Path file, JsonNode id) {
    try {
      ObjectNode stored = JsonGate.read(file);
      return stored.path("id").equals(id) ? new StoredResult(file, stored, false) : null;
    } catch (JsonRefusedException e) {
      return null;
    }
  }

  /** The shortest free name; a capture alone is what an interrupted write of ours leaves. */
  private Path free(String captureDigest) throws IOException {
    for (int digits = FEWEST_ID_DIGITS; digits <= name.id().length(); digits++) {
      Path base = folder.resolve(name.withIdDigits(digits));
      if (isFree(base, captureDigest)) {
        return base;
      }
    }
    throw new IOException("a file that is no result bears the name " + name.withIdDigits(64));
  }

  private static boolean isFree(Path base, String captureDigest) throws IOException {
    Path capture = base.resolveSibling(base.getFileName() + ResultName.CAPTURE);
    if (Files.exists(base.resolveSibling(base.getFileName() + ResultName.DOCUMENT))) {
      return false;
    }
    return !Files.exists(capture) || digest(capture).equals(captureDigest);
  }

  private static String digest(Path file) throws IOException {
    try (InputStream in = Files.newInputStream(file)) {
      return Sha256.hex(in);
    }
  }
}
