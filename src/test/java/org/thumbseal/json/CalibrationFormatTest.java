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
import java.time.Instant;
import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;
import java.util.function.Consumer;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import org.thumbseal.calibration.Calibration;
import org.thumbseal.calibration.CalibrationFacts;
import org.thumbseal.calibration.CalibrationPoint;
import org.thumbseal.calibration.ReferenceGauge;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.node.ObjectNode;

/** Holds page, schema, writer and reader of calibrations to one another. */
class CalibrationFormatTest {
  private static final Schema SCHEMA =
      SchemaRegistry.withDefaultDialect(SpecificationVersion.DRAFT_2020_12)
          .getSchema(SchemaDocument.CALIBRATION.text(), InputFormat.JSON);

  private static Calibration calibration() throws Exception {
    CalibrationFacts facts =
        new CalibrationFacts(
            "tp-01",
            Instant.parse("2026-03-02T07:15:07Z"),
            LocalDate.parse("2027-03-02"),
            new ReferenceGauge("RG-7", "C-2211", 0.25, 2),
            0.1,
            Optional.of(24.0),
            Optional.of("A. Other"));
    List<CalibrationPoint> points =
        List.of(
            new CalibrationPoint(0.4, 0),
            new CalibrationPoint(40.9, 40.0667),
            new CalibrationPoint(81.6, 80));
    return Calibration.of("3f9a1c2e-5b7d-8c41-9e02-6a1d4f8b2c70", facts, points);
  }

  @Test
  void whatIsWrittenIsValidAndReadBackTheSame() throws Exception {
    ObjectNode document = CalibrationTree.of(calibration());

    assertThat(SCHEMA.validate(document)).isEmpty();
    byte[] stored = Canonical.bytes(document);
    assertThat(CalibrationReader.read(JsonGate.read(stored))).isEqualTo(calibration());
  }

  @Test
  void everyMemberIsOnThePage() throws Exception {
    String page = Files.readString(Path.of("src/docs/calibration-format.md"), UTF_8);
    Set<String> names = new TreeSet<>();
    collect(names, CalibrationTree.of(calibration()));

    assertThat(names)
        .contains("calibratedAt", "offsetGain", "asFound", "by")
        .hasSizeGreaterThan(20);
    assertThat(names)
        .filteredOn(n -> !Set.of("value", "version").contains(n))
        .allSatisfy(name -> assertThat(page).containsPattern("[`.]" + name + "[`.]"));
  }

  private static void collect(Set<String> names, JsonNode node) {
    node.propertyStream()
        .forEach(
            member -> {
              names.add(member.getKey());
              collect(names, member.getValue());
            });
    if (node.isArray()) {
      node.valueStream().forEach(child -> collect(names, child));
    }
  }

  /** Each change breaks one promise of the page. */
  static Stream<Consumer<ObjectNode>> broken() {
    return Stream.of(
        d -> d.put("schema", "thumbseal-calibration/2"),
        d -> d.remove("calibratedAt"),
        d -> d.put("calibratedAt", "yesterday"),
        d -> d.put("due", "2027-13-45x"),
        d -> ((ObjectNode) d.get("sensor")).remove("id"),
        d -> ((ObjectNode) d.get("reference")).remove("certificate"),
        d -> ((ObjectNode) d.at("/reference/uncertainty")).remove("expandedUncertainty"),
        d -> ((ObjectNode) d.at("/reference/uncertainty")).put("expandedUncertainty", 0),
        d -> ((ObjectNode) d.at("/pairs/1")).put("reference", -40),
        d -> ((ObjectNode) d.at("/pairs/1")).put("sensor", "40"),
        d -> d.putArray("pairs"));
  }

  @ParameterizedTest
  @MethodSource
  void broken(Consumer<ObjectNode> change) throws Exception {
    ObjectNode document = CalibrationTree.of(calibration());
    change.accept(document);

    assertThat(SCHEMA.validate(document)).isNotEmpty();
    assertThatThrownBy(() -> CalibrationReader.read(document))
        .isInstanceOf(JsonRefusedException.class);
  }
}
