package org.thumbseal.page;

import java.nio.charset.StandardCharsets;
import org.thumbseal.json.Json;
import tools.jackson.databind.node.ObjectNode;

/** One server-sent event (WHATWG HTML, section "Server-sent events"), as bytes. */
final class PageEvent {
  private PageEvent() {}

  /** JSON text has no line end in it, so it is one line of data. */
  static byte[] of(String name, ObjectNode data) {
    String text = "event: " + name + "\ndata: " + Json.mapper().writeValueAsString(data) + "\n\n";
    return text.getBytes(StandardCharsets.UTF_8);
  }
}
