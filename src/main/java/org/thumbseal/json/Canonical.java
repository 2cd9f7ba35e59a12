package org.thumbseal.json;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import org.erdtman.jcs.JsonCanonicalizer;
import org.erdtman.jcs.NumberToJSON;
import tools.jackson.databind.node.ObjectNode;

/**
 * The canonical form of RFC 8785 (JCS): no white space, names in order of their UTF-16 code units,
 * numbers in ECMAScript's shortest form. Numbers are formatted by the canonicaliser, never by
 * {@link Double#toString}, which before JDK 19 does not always give the shortest digits.
 */
public final class Canonical {
  private Canonical() {}

  /**
   * The canonical form as text.
   *
   * @throws IllegalArgumentException if the tree holds a number or a string that JSON cannot carry
   *     unchanged
   */
  public static String text(ObjectNode tree) {
    String breach = TreeRules.breach(tree);
    if (breach != null) {
      throw new IllegalArgumentException("no canonical form: " + breach);
    }
    try {
      return new JsonCanonicalizer(Json.mapper().writeValueAsString(tree)).getEncodedString();
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  /** The canonical form in UTF-8, as {@link #text} gives it. */
  public static byte[] bytes(ObjectNode tree) {
    return text(tree).getBytes(StandardCharsets.UTF_8);
  }

  /** A finite number as RFC 8785 section 3.2.2.3 writes it. */
  static String number(double value) {
    try {
      return NumberToJSON.serializeNumber(value);
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }
}
