package org.thumbseal.fuzz;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Map;
import java.util.Random;
import org.thumbseal.json.Json;
import tools.jackson.databind.JsonNode;

/** Writes a tree in another of its many forms: other order, other spacing, other spelling. */
final class Rewriting {
  private final Dice dice;
  private final StringBuilder out = new StringBuilder();

  private Rewriting(Dice dice) {
    this.dice = dice;
  }

  static byte[] of(JsonNode tree, Dice dice) {
    Rewriting writing = new Rewriting(dice);
    writing.write(tree);
    return Bytes.of(writing.out.toString());
  }

  private void write(JsonNode node) {
    gap();
    if (node.isObject()) {
      object(node);
    } else if (node.isArray()) {
      array(node);
    } else if (node.isString()) {
      text(node.stringValue());
    } else {
      out.append(node.isNumber() ? number(node.decimalValue()) : node.toString());
    }
    gap();
  }

  private void object(JsonNode node) {
    List<Map.Entry<String, JsonNode>> members = new ArrayList<>(node.properties());
    Collections.shuffle(members, new Random(dice.bits()));
    String between = "{";
    for (Map.Entry<String, JsonNode> member : members) {
      out.append(between);
      gap();
      text(member.getKey());
      gap();
      out.append(':');
      write(member.getValue());
      between = ",";
    }
    out.append(members.isEmpty() ? "{}" : "}");
  }

  private void array(JsonNode node) {
    String between = "[";
    for (JsonNode element : node) {
      out.append(between);
      write(element);
      between = ",";
    }
    out.append(node.isEmpty() ? "[]" : "]");
  }

  private void text(String value) {
    if (dice.oneIn(8)) {
      out.append('"');
      value.chars().forEach(c -> out.append(String.format("\\u%04x", c)));
      out.append('"');
    } else {
      out.append(Json.mapper().writeValueAsString(value));
    }
  }

  private String number(BigDecimal value) {
    return switch (dice.below(4)) {
      case 0 -> value.setScale(Math.max(value.scale(), 0) + 2).toPlainString();
      case 1 -> value.unscaledValue() + "e" + -value.scale();
      default -> value.toPlainString();
    };
  }

  private void gap() {
    if (dice.oneIn(6)) {
      out.append(dice.of(List.of(" ", "\n", "\t", "\r\n", "    ")));
    }
  }
}
