package org.thumbseal.json;

import org.jspecify.annotations.Nullable;
import tools.jackson.core.StreamReadConstraints;
import tools.jackson.core.StreamReadFeature;
import tools.jackson.core.json.JsonFactory;
import tools.jackson.databind.DeserializationFeature;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.cfg.JsonNodeFeature;
import tools.jackson.databind.json.JsonMapper;
import tools.jackson.databind.node.ArrayNode;
import tools.jackson.databind.node.JsonNodeFactory;
import tools.jackson.databind.node.ObjectNode;

/**
 * The one way JSON is read and written, by a configured parser and mapper. Both are strict: no name
 * twice, nothing after the value, no unknown property when binding, no number but JSON's own,
 * everything bounded. Numbers in trees are exact.
 */
public final class Json {
  static final int DEEPEST = 64;
  static final int LONGEST_STRING = 65_536;
  static final int LONGEST_NAME = 256;
  static final int LONGEST_NUMBER = 64;

  private static final JsonFactory FACTORY = factory();

  private Json() {}

  /** The mapper; safe for use by several threads. */
  public static JsonMapper mapper() {
    return WhenNeeded.MAPPER;
  }

  /** A new, empty object. */
  public static ObjectNode object() {
    return JsonNodeFactory.instance.objectNode();
  }

  /** A new, empty array. */
  public static ArrayNode array() {
    return JsonNodeFactory.instance.arrayNode();
  }

  /**
   * The one value of a text, read as the mapper reads it; null where there is none.
   *
   * @throws tools.jackson.core.JacksonException if it is not JSON
   */
  static @Nullable JsonNode tree(String text) {
    return TreeReader.read(FACTORY, text);
  }

  /** Setting it up takes longer than most commands. */
  private static final class WhenNeeded {
    private static final JsonMapper MAPPER =
        JsonMapper.builder(FACTORY)
            .enable(DeserializationFeature.FAIL_ON_TRAILING_TOKENS)
            .enable(DeserializationFeature.FAIL_ON_UNKNOWN_PROPERTIES)
            .enable(JsonNodeFeature.USE_BIG_DECIMAL_FOR_FLOATS)
            .build();
  }

  private static JsonFactory factory() {
    return JsonFactory.builder()
        .enable(StreamReadFeature.STRICT_DUPLICATE_DETECTION)
        .streamReadConstraints(
            StreamReadConstraints.builder()
                .maxNestingDepth(DEEPEST)
                .maxStringLength(LONGEST_STRING)
                .maxNameLength(LONGEST_NAME)
                .maxNumberLength(LONGEST_NUMBER)
                .build())
        .build();
  }
}
