package org.thumbseal.json;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.node.ObjectNode;

/**
 * A document of unknown origin, to be shown: what is missing, of another kind than expected or out
 * of all bounds is simply not there. Places are JSON pointers (RFC 6901).
 */
public final class DocumentView {
  /** Nothing that is measured here comes near. */
  private static final double BEYOND_ALL = 1e9;

  private static final int MOST_ITEMS = 1_000;

  private final JsonNode node;

  private DocumentView(JsonNode node) {
    this.node = node;
  }

  /** A view of a document that came through the gate. */
  public static DocumentView of(ObjectNode document) {
    return new DocumentView(document);
  }

  /**
   * A quantity, or a limit.
   *
   * @param value in its unit
   * @param unit UCUM code; empty where none is named
   * @param expanded expanded uncertainty in the same unit, not negative; absent for what was set
   */
  public record Measured(double value, String unit, Optional<Double> expanded) {}

  /** Whether there is anything at a place. */
  public boolean has(String place) {
    return !node.at(place).isMissingNode();
  }

  /** The text at a place. */
  public Optional<String> text(String place) {
    JsonNode at = node.at(place);
    return at.isString() ? Optional.of(at.stringValue()) : Optional.empty();
  }

  /** The number at a place, between -1e9 and 1e9. */
  public Optional<Double> number(String place) {
    return number(node.at(place));
  }

  private static Optional<Double> number(JsonNode at) {
    double value = at.isNumber() ? at.doubleValue() : Double.NaN;
    return Math.abs(value) < BEYOND_ALL ? Optional.of(value) : Optional.empty();
  }

  /** Whether {@code true} stands at a place. */
  public boolean isTrue(String place) {
    return node.at(place).isBoolean() && node.at(place).booleanValue();
  }

  /** The quantity at a place. */
  public Optional<Measured> quantity(String place) {
    return number(place + "/value")
        .map(
            value ->
                new Measured(
                    value,
                    text(place + "/unit").orElse(""),
                    number(place + "/expandedUncertainty").filter(u -> u >= 0)));
  }

  /** The members of an array, the first thousand of them. */
  public List<DocumentView> list(String place) {
    List<DocumentView> items = new ArrayList<>();
    JsonNode at = node.at(place);
    for (int i = 0; at.isArray() && i < Math.min(MOST_ITEMS, at.size()); i++) {
      items.add(new DocumentView(at.get(i)));
    }
    return items;
  }

  /** The members of an object that are numbers, in order. */
  public Map<String, Double> numbers(String place) {
    Map<String, Double> numbers = new LinkedHashMap<>();
    if (node.at(place) instanceof ObjectNode object) {
      object
          .properties()
          .forEach(
              member ->
                  number(member.getValue())
                      .ifPresent(value -> numbers.put(member.getKey(), value)));
    }
    return numbers;
  }
}
