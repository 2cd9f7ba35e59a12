package org.thumbseal.json;

import static java.nio.charset.StandardCharsets.UTF_8;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import com.networknt.schema.InputFormat;
import com.networknt.schema.Schema;
import com.networknt.schema.SchemaRegistry;
import com.networknt.schema.SpecificationVersion;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Set;
import java.util.TreeSet;
import java.util.function.Consumer;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.node.ObjectNode;

/** Holds page, schema, writer and reader of corrections to one another. */
class CorrectionFormatTest {
  private static final Schema SCHEMA =
      SchemaRegistry.withDefaultDialect(SpecificationVersion.DRAFT_2020_12)
          .getSchema(SchemaDocument.CORRECTION.text(), InputFormat.JSON);

  private static ObjectNode complete() {
    return CorrectionTree.of(ExampleCorrection.complete());
  }

  private static boolean isValid(ObjectNode document) {
    return SCHEMA.validate(Json.mapper().writeValueAsString(document), InputFormat.JSON).isEmpty();
  }

  @Test
  void whatIsWrittenIsReadAgain() throws Exception {
    assertThat(isValid(complete())).isTrue();
    assertThat(CorrectionReader.read(complete())).isEqualTo(ExampleCorrection.complete());
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
    document.remove("by");
    document.remove("reason");
    document.set("was", Json.object());
    document.set("change", Json.object().put("note", "hose was old"));
    assertThat(isValid(document)).isTrue();
    assertThat(CorrectionReader.read(document).was().asset()).isEmpty();
  }

  /** Neither schema nor reader takes these. */
  static Stream<Consumer<ObjectNode>> broken() {
    return Stream.of(
        d -> d.put("schema", "thumbseal-correction/2"),
        d -> d.remove("id"),
        d -> d.remove("corrects"),
        d -> corrects(d).put("digest", "abc"),
        d -> corrects(d).put("file", "../head.json"),
        d -> corrects(d).put("file", "..\\head.json"),
        d -> corrects(d).put("file", "a\u0000b"),
        d -> corrects(d).remove("sequence"),
        d -> corrects(d).put("sequence", "1"),
        d -> d.put("number", 0),
        d -> d.put("number", 1.5),
        d -> d.put("correctedAt", "yesterday"),
        d -> d.set("change", Json.object()),
        d -> d.set("change", Json.object().put("void", "yes")),
        d -> d.remove("reason"),
        d -> d.put("reason", "x".repeat(5000)),
        d -> d.put("by", ""),
        d -> d.put("by", 7));
  }

  @ParameterizedTest
  @MethodSource("broken")
  void whatIsBroken(Consumer<ObjectNode> change) {
    ObjectNode document = complete();
    change.accept(document);
    assertThat(isValid(document)).isFalse();
    assertThatThrownBy(() -> CorrectionReader.read(document))
        .isInstanceOf(JsonRefusedException.class);
  }

  private static ObjectNode corrects(ObjectNode document) {
    return (ObjectNode) document.get("corrects");
  }

  @Test
  void theIdIsMadeOfAllButTheMomentAndTheProgram() {
    ObjectNode said = CorrectionTree.said(ExampleCorrection.complete());
    ObjectNode whole = complete();
    whole.remove("id");
    whole.remove("correctedAt");
    whole.remove("software");
    assertThat(said).isEqualTo(whole);
  }

  @Test
  void thePageNamesEveryMember() throws Exception {
    String page = Files.readString(Path.of("src/docs/result-format.md"), UTF_8);
    String section = page.substring(page.indexOf("## Corrections"), page.indexOf("## The seal"));
    Set<String> names = new TreeSet<>();
    collect(names, complete());
    assertThat(names).hasSizeGreaterThan(15);
    assertThat(names)
        .allSatisfy(name -> assertThat(section).containsPattern("[`.\"]" + name + "[`.\"]"));
  }

  private static void collect(Set<String> names, JsonNode node) {
    node.propertyStream()
        .forEach(
            member -> {
              names.add(member.getKey());
              collect(names, member.getValue());
            });
  }
}
