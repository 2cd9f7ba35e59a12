package org.thumbseal.json;

import tools.jackson.core.StreamReadConstraints;
import tools.jackson.core.StreamReadFeature;
import tools.jackson.core.json.JsonFactory;
import tools.jackson.databind.DeserializationFeature;
import tools.jackson.databind.cfg.JsonNodeFeature;
import tools.jackson.databind.json.JsonMapper;
import tools.jackson.databind.node.ObjectNode;

/**
 * The one configured mapper. It reads strictly: no name twice, nothing after the value, no unknown
 * property when binding, no number but JSON's own, everything bounded. Numbers in trees are exact.
 */
public final class Json {
  static final int DEEPEST = 64;
  static final int LONGEST_STRING = 65_536;
  static final int LONGEST_NAME = 256;
  static final int LONGEST_NUMBER = 64;

  private static final JsonMapper MAPPER =
      JsonMapper.builder(factory())
          .enable(DeserializationFeature.FAIL_ON_TRAILING_TOKENS)
          .enable(DeserializationFeature.FAIL_ON_UNKNOWN_PROPERTIES)
          .enable(JsonNodeFeature.USE_BIG_DECIMAL_FOR_FLOATS)
          .build();

  private Json() {}

  /** The mapper; safe for use by several threads. */
  public static JsonMapper mapper() {
    return MAPPER;
  }

  /** A new, empty object. */
  public static ObjectNode object() {
    return MAPPER.createObjectNode();
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
