package org.thumbseal.json;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.util.Locale;
import java.util.Objects;
import tools.jackson.databind.node.ObjectNode;

/** A result document as the program makes them, with all that contract section 3 names. */
public final class ExampleDocument {
  private ExampleDocument() {}

  /** The document before it is sealed. */
  public static ObjectNode unsealed() {
    try (InputStream in = ExampleDocument.class.getResourceAsStream("result-example.json")) {
      return JsonGate.read(Objects.requireNonNull(in).readAllBytes());
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    } catch (JsonRefusedException e) {
      throw new IllegalStateException(e);
    }
  }

  /** The document of another test, its id and time following from a number. */
  public static ObjectNode unsealed(int number) {
    return numbered(unsealed(), number);
  }

  /** Likewise, from a document that is given. */
  public static ObjectNode numbered(byte[] document, int number) {
    try {
      return numbered(JsonGate.read(document), number);
    } catch (JsonRefusedException e) {
      throw new IllegalStateException(e);
    }
  }

  private static ObjectNode numbered(ObjectNode document, int number) {
    document.put("id", String.format(Locale.ROOT, "%08x-5b7d-8c41-9e02-6a1d4f8b2c70", number));
    ((ObjectNode) document.get("test"))
        .put(
            "startedAt",
            java.time.Instant.parse("2026-03-02T07:15:00Z").plusSeconds(60L * number).toString());
    return document;
  }
}
