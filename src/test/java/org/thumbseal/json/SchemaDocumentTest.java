package org.thumbseal.json;

import static org.assertj.core.api.Assertions.assertThat;

import com.networknt.schema.Error;
import com.networknt.schema.InputFormat;
import com.networknt.schema.Schema;
import com.networknt.schema.SchemaRegistry;
import com.networknt.schema.SpecificationVersion;
import java.util.List;
import java.util.function.Consumer;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import tools.jackson.databind.node.ArrayNode;
import tools.jackson.databind.node.ObjectNode;

class SchemaDocumentTest {
  private static final Schema RESULT = schema(SchemaDocument.RESULT);

  @Test
  void aResultIsValidAsReplayGivesItAndSealed() {
    ObjectNode document = complete();
    assertThat(errors(document)).isEmpty();

    document.set("ledger", Json.object().put("sequence", 1).put("previous", "0".repeat(64)));
    document.put("signature", "e30.." + "A".repeat(86));
    assertThat(errors(document)).isEmpty();
  }

  /** Each change breaks one promise of contract section 3. */
  static Stream<Consumer<ObjectNode>> broken() {
    return Stream.of(
        d -> d.put("schema", "thumbseal-result/2"),
        d -> d.remove("id"),
        d -> d.put("id", "3F9A1C2E-5B7D-8C41-9E02-6A1D4F8B2C70"),
        d -> d.put("kind", "guess"),
        d -> d.put("verdict", "passed"),
        d -> d.remove("verdict"),
        d -> d.putArray("reasons"),
        d -> object(d, "reasons").put("code", "felt-right"),
        d -> object(d, "findings").put("code", "ghost"),
        d -> object(d, "findings").put("confidence", 1.01),
        d -> object(d, "findings").remove("advice"),
        d -> ((ObjectNode) d.get("asset")).remove("id"),
        d -> d.putNull("asset"),
        d -> at(d, "measurements", "riseTime").put("value", "7.42"),
        d -> at(d, "measurements", "riseTime").putNull("value"),
        d -> at(d, "measurements", "riseTime").put("unit", "ms"),
        d -> at(d, "measurements", "maximumVacuum").put("unit", "s"),
        d -> at(d, "measurements", "maximumVacuum").remove("coverageFactor"),
        d -> at(d, "measurements", "maximumVacuum").put("expandedUncertainty", -0.1),
        d -> ((ObjectNode) d.at("/test/phases/0")).put("phase", "warm-up"),
        d -> ((ObjectNode) d.at("/test")).put("startedAt", "2026-03-02 07:15"),
        d -> ((ObjectNode) d.at("/evidence")).put("sha256", "abc"),
        d -> ((ObjectNode) d.at("/evidence")).put("capture", "../x.log"),
        d -> ((ObjectNode) d.at("/evidence/rejected")).put("crc", -1),
        d -> d.put("signature", "e30.." + "A".repeat(86)),
        d -> d.set("ledger", Json.object().put("sequence", 1).put("previous", "0".repeat(64))));
  }

  @ParameterizedTest
  @MethodSource
  void broken(Consumer<ObjectNode> change) {
    ObjectNode document = complete();
    change.accept(document);

    assertThat(errors(document)).isNotEmpty();
  }

  /** Draft 2020-12's own meta-schema, as the validator carries it. */
  @Test
  void theSchemasAreSchemas() {
    Schema meta =
        SchemaRegistry.withDefaultDialect(SpecificationVersion.DRAFT_2020_12)
            .getSchema(
                com.networknt.schema.SchemaLocation.of(
                    "https://json-schema.org/draft/2020-12/schema"));
    for (SchemaDocument schema : SchemaDocument.values()) {
      assertThat(meta.validate(schema.text(), InputFormat.JSON)).isEmpty();
      assertThat(schema.text()).endsWith("}\n");
    }
    assertThat(meta.validate("{\"type\":\"thing\"}", InputFormat.JSON)).isNotEmpty();
  }

  private static ObjectNode complete() {
    ObjectNode document = ExampleDocument.unsealed();
    ((ObjectNode) document.get("evidence")).put("capture", "x.log").put("sha256", "0".repeat(64));
    return document;
  }

  private static ObjectNode object(ObjectNode document, String array) {
    return (ObjectNode) ((ArrayNode) document.get(array)).get(0);
  }

  private static ObjectNode at(ObjectNode document, String block, String name) {
    return (ObjectNode) document.get(block).get(name);
  }

  private static List<Error> errors(ObjectNode document) {
    return RESULT.validate(document);
  }

  private static Schema schema(SchemaDocument schema) {
    return SchemaRegistry.withDefaultDialect(SpecificationVersion.DRAFT_2020_12)
        .getSchema(schema.text(), InputFormat.JSON);
  }
}
