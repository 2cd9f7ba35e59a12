package org.thumbseal.cli;

import java.nio.charset.StandardCharsets;
import java.util.List;
import org.thumbseal.json.JsonGate;
import org.thumbseal.json.JsonRefusedException;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.node.ObjectNode;

/** What the program answered to a command line, run in this process. */
record Answer(int code, String out, String err) {

  static Answer to(Object... args) {
    CommandRun run = CommandRun.of(args);
    return new Answer(run.code(), run.out(), run.err());
  }

  /** The documents on standard output, one a line. */
  List<ObjectNode> documents() {
    return out.lines().map(Answer::document).toList();
  }

  private static ObjectNode document(String line) {
    try {
      return JsonGate.read(line.getBytes(StandardCharsets.UTF_8));
    } catch (JsonRefusedException e) {
      throw new AssertionError(line, e);
    }
  }

  /** The one document that is expected. */
  ObjectNode onlyDocument() {
    List<ObjectNode> documents = documents();
    if (documents.size() != 1) {
      throw new AssertionError(documents.size() + " documents: " + out + err);
    }
    return documents.get(0);
  }

  static String verdict(JsonNode document) {
    return document.get("verdict").stringValue();
  }

  static List<String> reasons(JsonNode document) {
    return document.get("reasons").valueStream().map(r -> r.get("code").stringValue()).toList();
  }

  static double measured(JsonNode document, String name) {
    return document.at("/measurements/" + name + "/value").doubleValue();
  }
}
