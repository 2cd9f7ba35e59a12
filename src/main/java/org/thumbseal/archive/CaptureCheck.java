package org.thumbseal.archive;

import java.io.IOException;
import java.io.InputStream;
import java.nio.file.Files;
import java.nio.file.InvalidPathException;
import java.nio.file.Path;
import org.thumbseal.seal.Sha256;
import tools.jackson.databind.JsonNode;

/** Compares the capture beside a document with the digest that was sealed. */
enum CaptureCheck {
  /** There, and the one that was sealed. */
  SAME(""),
  /** The document names none. */
  NONE(""),
  MISSING("its capture is not beside it"),
  DIFFERENT("the capture beside it is not the one that was sealed"),
  UNREADABLE("its capture cannot be read"),
  LINK("its capture is a symbolic link, which is not followed"),
  UNSAFE("it names a capture outside its folder");

  private final String remark;

  CaptureCheck(String remark) {
    this.remark = remark;
  }

  String remark() {
    return remark;
  }

  static CaptureCheck of(Path document, JsonNode evidence) {
    String name = evidence.path("capture").asString("");
    if (name.isEmpty()) {
      return NONE;
    }
    if (name.matches(".*[/\\\\\0].*") || name.equals("..")) {
      return UNSAFE;
    }
    try {
      Path capture = document.resolveSibling(name);
      if (Files.isSymbolicLink(capture)) {
        return LINK;
      }
      return Files.isRegularFile(capture) ? compare(capture, evidence) : MISSING;
    } catch (InvalidPathException e) {
      return UNSAFE;
    } catch (IOException e) {
      return UNREADABLE;
    }
  }

  private static CaptureCheck compare(Path capture, JsonNode evidence) throws IOException {
    try (InputStream in = Files.newInputStream(capture)) {
      return Sha256.hex(in).equals(evidence.path("sha256").asString("")) ? SAME : DIFFERENT;
    }
  }
}
