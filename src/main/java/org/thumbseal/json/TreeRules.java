package org.thumbseal.json;

import java.math.BigDecimal;
import java.util.Map;
import org.jspecify.annotations.Nullable;
import tools.jackson.databind.JsonNode;

/**
 * What a tree must keep to so that its canonical form loses nothing: strings that are Unicode text,
 * and numbers that say exactly what their IEEE 754 double says in its shortest form. With the
 * second rule no digit can be altered and leave the canonical form as it was.
 */
final class TreeRules {
  /** 2^53 - 1, the largest integer on whose exactness every JSON reader agrees (RFC 8259, 6). */
  private static final BigDecimal LARGEST_INTEGER = BigDecimal.valueOf((1L << 53) - 1);

  private TreeRules() {}

  /** The first breach found, as half a sentence; null when there is none. */
  static @Nullable String breach(JsonNode node) {
    if (node.isNumber()) {
      return numberBreach(node);
    }
    if (node.isString()) {
      return textBreach(node.stringValue());
    }
    return node.isObject() ? objectBreach(node) : childBreach(node);
  }

  private static @Nullable String objectBreach(JsonNode object) {
    for (Map.Entry<String, JsonNode> property : object.properties()) {
      String breach = textBreach(property.getKey());
      breach = breach == null ? breach(property.getValue()) : breach;
      if (breach != null) {
        return breach;
      }
    }
    return null;
  }

  private static @Nullable String childBreach(JsonNode array) {
    for (JsonNode child : array) {
      String breach = breach(child);
      if (breach != null) {
        return breach;
      }
    }
    return null;
  }

  private static @Nullable String textBreach(String text) {
    boolean lone = text.codePoints().anyMatch(c -> c >= 0xD800 && c <= 0xDFFF);
    return lone ? "a string holds half a surrogate pair, which is no character" : null;
  }

  private static @Nullable String numberBreach(JsonNode number) {
    if (number.isDouble() || number.isFloat()) {
      return Double.isFinite(number.doubleValue()) ? null : "a number is infinite or none at all";
    }
    BigDecimal exact = number.decimalValue();
    double value = exact.doubleValue();
    if (!Double.isFinite(value)) {
      return "the number " + number + " is too large";
    }
    if (number.isIntegralNumber() && exact.abs().compareTo(LARGEST_INTEGER) > 0) {
      return "the integer " + number + " is beyond 2^53 - 1; write it as a string";
    }
    return exact.compareTo(new BigDecimal(Canonical.number(value))) == 0
        ? null
        : "the number " + number + " has more digits than a double holds";
  }
}
