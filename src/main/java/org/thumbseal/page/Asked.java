package org.thumbseal.page;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.Function;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.thumbseal.visit.BadScanException;
import org.thumbseal.visit.Check;
import org.thumbseal.visit.CheckItem;
import org.thumbseal.visit.CheckState;
import org.thumbseal.visit.ScannedCode;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.node.ObjectNode;

/** The members of a request, each checked as it is asked for. */
final class Asked {
  private static final int LONGEST_WORDS = 200;

  private final ObjectNode body;

  Asked(ObjectNode body) {
    this.body = body;
  }

  String text(String name) throws Refusal {
    return text(body, name).orElseThrow(() -> Refusal.badRequest("'" + name + "' is missing"));
  }

  /** A whole number from 0 on. */
  long count(String name) throws Refusal {
    JsonNode value = body.get(name);
    if (value == null || !value.isIntegralNumber() || !value.canConvertToLong()) {
      throw Refusal.badRequest("'" + name + "' must be a whole number");
    }
    return value.longValue();
  }

  private static Optional<String> text(JsonNode of, String name) throws Refusal {
    JsonNode value = of.get(name);
    if (value == null || value.isNull()) {
      return Optional.empty();
    }
    if (!value.isString()) {
      throw Refusal.badRequest("'" + name + "' must be a text");
    }
    return Optional.of(value.stringValue());
  }

  /** The asset; empty where none is given. */
  Optional<String> asset() throws Refusal {
    Optional<String> given = text(body, "asset");
    return given.isPresent() ? Optional.of(scanned(given.get()).asset()) : Optional.empty();
  }

  /** What a scanner typed. */
  ScannedCode scanned() throws Refusal {
    return scanned(text("text"));
  }

  private static ScannedCode scanned(String text) throws Refusal {
    try {
      return ScannedCode.of(text);
    } catch (BadScanException e) {
      throw new Refusal(422, e.reason().code(), String.valueOf(e.getMessage()));
    }
  }

  boolean isByCommand() throws Refusal {
    return text(body, "by").filter("command"::equals).isPresent();
  }

  /** What was looked at; nothing where there is no list. */
  List<Check> checks() throws Refusal {
    List<Check> checks = new ArrayList<>();
    for (JsonNode node : body.path("checks")) {
      Check check = check(node);
      if (checks.stream().anyMatch(c -> c.item() == check.item())) {
        throw Refusal.badRequest("a check is there twice: " + check.item().code());
      }
      checks.add(check);
    }
    return checks;
  }

  private static <T> Refusal none(String what, T[] all, Function<T, String> code) {
    String known = Stream.of(all).map(code).collect(Collectors.joining(", "));
    return Refusal.badRequest("no such " + what + " of a check; there are " + known);
  }

  private static Check check(JsonNode node) throws Refusal {
    CheckItem item =
        text(node, "item")
            .flatMap(CheckItem::of)
            .orElseThrow(() -> none("item", CheckItem.values(), CheckItem::code));
    CheckState state =
        text(node, "state")
            .flatMap(CheckState::of)
            .orElseThrow(() -> none("state", CheckState.values(), CheckState::code));
    return new Check(item, state, words(node, "part"), words(node, "reason"));
  }

  private static Optional<String> words(JsonNode node, String name) throws Refusal {
    Optional<String> words = text(node, name).map(String::strip).filter(w -> !w.isEmpty());
    if (words.isPresent() && !isPlain(words.get(), LONGEST_WORDS)) {
      throw Refusal.badRequest("'" + name + "' must be up to 200 plain characters");
    }
    return words;
  }

  private static boolean isPlain(String text, int longest) {
    return !text.isEmpty()
        && text.length() <= longest
        && text.codePoints().noneMatch(Asked::isNoCharacter);
  }

  private static boolean isNoCharacter(int codePoint) {
    return Character.isISOControl(codePoint) || Character.getType(codePoint) == Character.SURROGATE;
  }
}
