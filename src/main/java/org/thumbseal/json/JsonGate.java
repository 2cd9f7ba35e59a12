package org.thumbseal.json;

import java.io.IOException;
import java.io.InputStream;
import java.nio.ByteBuffer;
import java.nio.charset.CharacterCodingException;
import java.nio.charset.StandardCharsets;
import java.nio.file.AccessDeniedException;
import java.nio.file.Files;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;
import org.jspecify.annotations.Nullable;
import tools.jackson.core.JacksonException;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.node.ObjectNode;

/**
 * The one way in for JSON of unknown origin. Whatever the bytes are, the outcome is a bounded
 * object whose canonical form loses nothing, or one {@link JsonRefusedException}.
 */
public final class JsonGate {
  /** The largest document taken, in bytes; a result has about 3000. */
  public static final int LARGEST = 1 << 20;

  private JsonGate() {}

  /**
   * Reads a file of at most {@link #LARGEST} bytes.
   *
   * @throws JsonRefusedException if it cannot be read or is refused; the message names no file
   */
  public static ObjectNode read(Path file) throws JsonRefusedException {
    if (Files.isDirectory(file)) {
      throw new JsonRefusedException("is a directory, not a file");
    }
    if (Files.exists(file) && !Files.isRegularFile(file)) {
      // Opening a pipe that nobody writes to would wait for ever.
      throw new JsonRefusedException("is a pipe or a device, not a file");
    }
    try (InputStream in = Files.newInputStream(file)) {
      return read(in.readNBytes(LARGEST + 1));
    } catch (NoSuchFileException e) {
      throw new JsonRefusedException("no such file");
    } catch (AccessDeniedException e) {
      throw new JsonRefusedException("may not be read: permission denied");
    } catch (IOException e) {
      throw new JsonRefusedException("cannot be read: " + e.getMessage());
    }
  }

  /**
   * Reads the bytes of a document.
   *
   * @throws JsonRefusedException if they are anything but one JSON object in UTF-8 without a byte
   *     order mark, within the bounds, no name twice, every number exact as a double
   */
  public static ObjectNode read(byte[] bytes) throws JsonRefusedException {
    if (bytes.length > LARGEST) {
      throw new JsonRefusedException("is larger than " + LARGEST + " bytes: not a document");
    }
    JsonNode tree = parse(decode(bytes));
    if (!(tree instanceof ObjectNode object)) {
      throw new JsonRefusedException("is not a JSON object");
    }
    String breach = TreeRules.breach(object);
    if (breach != null) {
      throw new JsonRefusedException(breach);
    }
    return object;
  }

  private static String decode(byte[] bytes) throws JsonRefusedException {
    try {
      String text = StandardCharsets.UTF_8.newDecoder().decode(ByteBuffer.wrap(bytes)).toString();
      if (text.startsWith("\uFEFF")) {
        throw new JsonRefusedException("begins with a byte order mark; save it as UTF-8 without");
      }
      return text;
    } catch (CharacterCodingException e) {
      throw new JsonRefusedException("is not UTF-8 text");
    }
  }

  private static @Nullable JsonNode parse(String text) throws JsonRefusedException {
    try {
      return Json.tree(text);
    } catch (JacksonException e) {
      throw new JsonRefusedException("is not JSON: " + reason(e));
    } catch (IllegalArgumentException | ArithmeticException e) {
      // Thrown for exponents that no BigDecimal can hold.
      throw new JsonRefusedException("is not JSON: a number is out of all bounds");
    }
  }

  private static String reason(JacksonException e) {
    String plain =
        e.getOriginalMessage()
            .replaceAll("(, from `[^`]*`| \\(start marker at .*| \\(bound as .*|: enable `.*)", "")
            .replaceAll("\\(maximum allowed \\((\\d+)\\)", "$1")
            // The word may be a private key that was given for a document by mistake.
            .replaceAll("Unrecognized token '[^']*'", "Unrecognized token");
    var where = e.getLocation();
    boolean known = where != null && where.getLineNr() > 0;
    return known
        ? "line " + where.getLineNr() + ", column " + where.getColumnNr() + ": " + plain
        : plain;
  }
}
