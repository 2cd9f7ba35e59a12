package org.thumbseal.json;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import com.networknt.schema.InputFormat;
import com.networknt.schema.Schema;
import com.networknt.schema.SchemaRegistry;
import com.networknt.schema.SpecificationVersion;
import java.util.Arrays;
import java.util.List;
import java.util.stream.StreamSupport;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.thumbseal.seek.Conclusion.Verdict;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.node.ObjectNode;

/** Holds schema and writer of leak searches to one another. */
class LeakSearchFormatTest {
  private static final Schema SCHEMA =
      SchemaRegistry.withDefaultDialect(SpecificationVersion.DRAFT_2020_12)
          .getSchema(SchemaDocument.LEAK_SEARCH.text(), InputFormat.JSON);

  private static ObjectNode complete() {
    return LeakSearchTree.of(ExampleLeakSearch.complete());
  }

  private static boolean isValid(ObjectNode document) {
    return SCHEMA.validate(Json.mapper().writeValueAsString(document), InputFormat.JSON).isEmpty();
  }

  @Test
  void whatIsWrittenKeepsToTheSchema() {
    assertThat(isValid(complete())).isTrue();
    assertThat(LeakSearchTree.isLeakSearch(complete())).isTrue();
  }

  @Test
  void sealedToo() {
    ObjectNode document = complete();
    document.set("ledger", Json.object().put("sequence", 18).put("previous", "0".repeat(64)));
    assertThat(isValid(document)).isFalse();
    document.put("signature", "e30.." + "A".repeat(86));
    assertThat(isValid(document)).isTrue();
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "schema",
        "id",
        "kind",
        "asset",
        "path",
        "tests",
        "rules",
        "conclusion",
        "ambient"
      })
  void withoutOneOfTheseItIsNone(String member) {
    ObjectNode document = complete();
    document.remove(member);
    assertThat(isValid(document)).isFalse();
  }

  @Test
  void theLeastThereCanBe() {
    ObjectNode document = complete();
    document.remove(List.of("by", "jar", "pumpingSpeed", "sections", "notLookedAt"));
    assertThat(isValid(document)).isTrue();
  }

  /** 28 L/min x 16 kPa / 101.325 kPa. */
  @Test
  void aSectionSaysWhatItTakesAndLetsIn() {
    JsonNode section = complete().at("/sections/0");
    assertThat(section.at("/sections/0").stringValue()).isEqualTo("the jar with its lid gasket");
    assertThat(section.at("/vacuumLost/value").doubleValue()).isEqualTo(16);
    assertThat(section.at("/leak/value").doubleValue())
        .isCloseTo(28_000 * 16 / 101.325, within(0.01));
    assertThat(section.at("/leak/unit").stringValue()).isEqualTo("mL/min");
    assertThat(section.at("/leaks").booleanValue()).isTrue();
    assertThat(complete().at("/notLookedAt")).hasSize(3);
  }

  @Test
  void theSchemaKnowsEveryConclusion() throws Exception {
    JsonNode codes =
        Json.mapper()
            .readTree(SchemaDocument.LEAK_SEARCH.text())
            .at("/properties/conclusion/properties/code/enum");
    assertThat(StreamSupport.stream(codes.spliterator(), false).map(JsonNode::stringValue))
        .containsExactlyElementsOf(Arrays.stream(Verdict.values()).map(Verdict::code).toList());
  }
}
