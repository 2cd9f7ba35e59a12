package org.thumbseal.page;

import org.thumbseal.json.Json;
import tools.jackson.databind.node.ObjectNode;

/** A request that is not answered as asked: status, a word for programs, a line for people. */
final class Refusal extends Exception {
  private static final long serialVersionUID = 1L;

  private final int status;
  private final String code;
  private final String text;

  /**
   * Says no.
   *
   * @param status of HTTP, 4xx or 5xx
   * @param code words with dashes
   * @param text what is wrong and what to do
   */
  Refusal(int status, String code, String text) {
    super(text);
    this.status = status;
    this.code = code;
    this.text = text;
  }

  static Refusal badRequest(String text) {
    return new Refusal(400, "bad-request", text);
  }

  static Refusal forbidden(String text) {
    return new Refusal(403, "forbidden", text);
  }

  int status() {
    return status;
  }

  ObjectNode tree() {
    return Json.object().put("code", code).put("text", text);
  }
}
