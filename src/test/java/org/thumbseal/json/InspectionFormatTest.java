package org.thumbseal.json;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import com.networknt.schema.InputFormat;
import com.networknt.schema.Schema;
import com.networknt.schema.SchemaRegistry;
import com.networknt.schema.SpecificationVersion;
import java.util.List;
import java.util.stream.StreamSupport;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import org.thumbseal.care.Inspection;
import org.thumbseal.care.Work;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.node.ObjectNode;

/** Holds schema, writer and reader of inspections to one another. */
class InspectionFormatTest {
  private static final Schema SCHEMA =
      SchemaRegistry.withDefaultDialect(SpecificationVersion.DRAFT_2020_12)
          .getSchema(SchemaDocument.INSPECTION.text(), InputFormat.JSON);

  private static ObjectNode complete() {
    return InspectionTree.of(ExampleInspection.complete());
  }

  private static boolean isValid(ObjectNode document) {
    return SCHEMA.validate(Json.mapper().writeValueAsString(document), InputFormat.JSON).isEmpty();
  }

  @Test
  void whatIsWrittenIsReadAgain() throws Exception {
    assertThat(isValid(complete())).isTrue();
    assertThat(InspectionReader.read(complete())).isEqualTo(ExampleInspection.complete());
  }

  @Test
  void sealedToo() {
    ObjectNode document = complete();
    document.set("ledger", Json.object().put("sequence", 18).put("previous", "0".repeat(64)));
    assertThat(isValid(document)).isFalse();
    document.put("signature", "e30.." + "A".repeat(86));
    assertThat(isValid(document)).isTrue();
  }

  @Test
  void theLeastThereCanBe() throws Exception {
    ObjectNode document = complete();
    document.remove(List.of("note", "answers", "outcome"));
    assertThat(isValid(document)).isTrue();
    assertThat(InspectionReader.read(document).said().more().note()).isEmpty();
  }

  @ParameterizedTest
  @ValueSource(
      strings = {"schema", "id", "kind", "asset", "work", "on", "inOrder", "by", "recordedAt"})
  void withoutOneOfTheseItIsNone(String member) {
    ObjectNode document = complete();
    document.remove(member);
    assertThat(isValid(document)).isFalse();
    if (!member.equals("kind")) {
      assertThatThrownBy(() -> InspectionReader.read(document))
          .isInstanceOf(JsonRefusedException.class);
    }
  }

  /** What version 0.1.0 sealed before there were words and outcomes goes on to be read. */
  @Test
  void answersWithoutWordsAreOnesToo() throws Exception {
    ObjectNode document = complete();
    document.remove("outcome");
    document.withArray("answers").remove(1);
    assertThat(isValid(document)).isTrue();
    assertThat(InspectionReader.read(document).said().more().answers())
        .containsExactly(new Inspection.Answer("runs", "no"));
  }

  @Test
  void anOutcomeIsWholeOrNone() {
    ObjectNode document = complete();
    document.withObject("outcome").remove("who");
    assertThat(isValid(document)).isFalse();
    assertThatThrownBy(() -> InspectionReader.read(document))
        .isInstanceOf(JsonRefusedException.class);
  }

  @ParameterizedTest
  @CsvSource({"work, painting", "on, 2026-02-30", "on, 02.03.2026", "recordedAt, noon", "by, ''"})
  void whatMakesNoSenseIsRefused(String member, String text) {
    ObjectNode document = complete().put(member, text);
    assertThatThrownBy(() -> InspectionReader.read(document))
        .isInstanceOf(JsonRefusedException.class);
  }

  @Test
  void theSchemaKnowsEveryWorkThatCanBeSealed() throws Exception {
    JsonNode works =
        Json.mapper().readTree(SchemaDocument.INSPECTION.text()).at("/properties/work/enum");
    List<String> codes =
        StreamSupport.stream(works.spliterator(), false).map(JsonNode::stringValue).toList();
    assertThat(codes).containsAll(Work.saidCodes()).contains(Work.TROUBLE_GUIDE.code());
    assertThat(codes).allMatch(code -> Work.of(code).isPresent());
  }
}
