package org.thumbseal.page;

import com.sun.net.httpserver.HttpExchange;
import java.io.IOException;
import java.util.Locale;
import org.thumbseal.json.JsonGate;
import org.thumbseal.json.JsonRefusedException;
import tools.jackson.databind.node.ObjectNode;

/** What is sent with a request: a small JSON object. */
final class Body {
  private static final int LARGEST = 16 * 1_024;

  private Body() {}

  /** Reads it; a larger one is refused by what it says of its length, or at its 16385th byte. */
  static ObjectNode read(HttpExchange exchange) throws IOException, Refusal {
    String type = exchange.getRequestHeaders().getFirst("Content-Type");
    if (type == null || !type.toLowerCase(Locale.ROOT).startsWith("application/json")) {
      throw new Refusal(415, "bad-request", "send application/json");
    }
    String length = exchange.getRequestHeaders().getFirst("Content-Length");
    if (length != null && (length.length() > 9 || Long.parseLong(length) > LARGEST)) {
      throw tooLarge();
    }
    byte[] bytes = exchange.getRequestBody().readNBytes(LARGEST + 1);
    if (bytes.length > LARGEST) {
      throw tooLarge();
    }
    try {
      return JsonGate.read(bytes);
    } catch (JsonRefusedException e) {
      throw Refusal.badRequest("what was sent " + e.getMessage());
    }
  }

  private static Refusal tooLarge() {
    return new Refusal(413, "bad-request", "at most 16 KiB can be sent");
  }
}
