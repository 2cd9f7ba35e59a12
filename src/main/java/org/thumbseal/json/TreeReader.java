package org.thumbseal.json;

import org.jspecify.annotations.Nullable;
import tools.jackson.core.JsonParser;
import tools.jackson.core.JsonToken;
import tools.jackson.core.ObjectReadContext;
import tools.jackson.core.exc.StreamReadException;
import tools.jackson.core.json.JsonFactory;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.node.ArrayNode;
import tools.jackson.databind.node.JsonNodeFactory;
import tools.jackson.databind.node.ObjectNode;

/**
 * Makes a tree of what Jackson's parser reads, as its mapper would. The mapper can far more, and to
 * set it up took some 0.2 s of the 0.8 s of a command like {@code due}.
 */
final class TreeReader {
  private static final JsonNodeFactory NODES = JsonNodeFactory.instance;

  private final JsonParser parser;

  private TreeReader(JsonParser parser) {
    this.parser = parser;
  }

  /**
   * The one value of a text; null where there is none.
   *
   * @throws tools.jackson.core.JacksonException if it is not JSON, or something follows the value
   */
  static @Nullable JsonNode read(JsonFactory factory, String text) {
    try (JsonParser parser = factory.createParser(ObjectReadContext.empty(), text)) {
      return parser.nextToken() == null ? null : new TreeReader(parser).only();
    }
  }

  private JsonNode only() {
    JsonNode value = value();
    if (parser.nextToken() != null) {
      throw new StreamReadException(parser, "something follows the value");
    }
    return value;
  }

  /** Not deeper than the parser goes. */
  private JsonNode value() {
    return switch (parser.currentToken()) {
      case START_OBJECT -> object();
      case START_ARRAY -> array();
      case VALUE_STRING -> NODES.stringNode(parser.getString());
      case VALUE_NUMBER_INT -> integer();
      case VALUE_NUMBER_FLOAT -> NODES.numberNode(parser.getDecimalValue());
      case VALUE_TRUE -> NODES.booleanNode(true);
      case VALUE_FALSE -> NODES.booleanNode(false);
      case VALUE_NULL -> NODES.nullNode();
      default -> throw new StreamReadException(parser, "a value is missing");
    };
  }

  private ObjectNode object() {
    ObjectNode object = NODES.objectNode();
    for (String name = parser.nextName(); name != null; name = parser.nextName()) {
      parser.nextToken();
      object.set(name, value());
    }
    return object;
  }

  private ArrayNode array() {
    ArrayNode array = NODES.arrayNode();
    while (parser.nextToken() != JsonToken.END_ARRAY) {
      array.add(value());
    }
    return array;
  }

  private JsonNode integer() {
    return switch (parser.getNumberType()) {
      case INT -> NODES.numberNode(parser.getIntValue());
      case LONG -> NODES.numberNode(parser.getLongValue());
      default -> NODES.numberNode(parser.getBigIntegerValue());
    };
  }
}
