package org.thumbseal.page;

import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStream;
import java.io.InputStreamReader;
import java.nio.charset.StandardCharsets;
import java.util.Optional;
import org.thumbseal.json.JsonGate;
import org.thumbseal.json.JsonRefusedException;
import tools.jackson.databind.node.ObjectNode;

/** Reads server-sent events as a browser does (WHATWG HTML, "Interpreting an event stream"). */
final class EventReader {
  private final BufferedReader lines;

  /** One event. */
  record Event(String name, ObjectNode data) {}

  EventReader(InputStream in) {
    lines = new BufferedReader(new InputStreamReader(in, StandardCharsets.UTF_8));
  }

  /** The next event; empty at the end of the stream. */
  Optional<Event> next() throws IOException {
    String name = "message";
    StringBuilder data = new StringBuilder();
    String line = lines.readLine();
    while (line != null && !line.isEmpty()) {
      if (line.startsWith("event: ")) {
        name = line.substring("event: ".length());
      } else if (line.startsWith("data: ")) {
        data.append(line.substring("data: ".length()));
      }
      line = lines.readLine();
    }
    return line == null ? Optional.empty() : Optional.of(new Event(name, tree(data.toString())));
  }

  private static ObjectNode tree(String data) throws IOException {
    try {
      return JsonGate.read(data.getBytes(StandardCharsets.UTF_8));
    } catch (JsonRefusedException e) {
      throw new IOException(data, e);
    }
  }
}
