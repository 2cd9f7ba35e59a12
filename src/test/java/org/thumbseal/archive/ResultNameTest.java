package org.thumbseal.archive;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import org.thumbseal.json.ExampleDocument;
import org.thumbseal.json.Json;
import tools.jackson.databind.node.ObjectNode;

class ResultNameTest {
  @ParameterizedTest
  @CsvSource({
    "SP-014, SP-014",
    "a/b, a-b",
    "../../x, x",
    "..\\..\\x, x",
    "..., asset",
    "'', asset",
    "CON, CON",
    "C:\\x, C-x",
    "a_b, a-b",
    "-rf, rf",
    "Pumpe Süd 3, Pumpe-S-d-3",
    "'a\u0000b\u001b[2J', a-b-2J",
    "\u202egnp.x, gnp.x",
    "\ud83d\ude00, asset"
  })
  void assetsBecomeHarmlessParts(String asset, String part) {
    assertThat(named(asset).stem()).isEqualTo("20260302T071507Z_" + part + "_pass");
  }

  @Test
  void longAssetsAreCut() {
    assertThat(named("x".repeat(300)).stem())
        .isEqualTo("20260302T071507Z_" + "x".repeat(40) + "_pass");
    assertThat(named("x".repeat(39) + "-y").stem()).doesNotContain("-_");
  }

  @Test
  void noAssetIsUnassigned() {
    ObjectNode document = ExampleDocument.unsealed();
    document.remove("asset");

    assertThat(ResultName.of(document).stem()).isEqualTo("20260302T071507Z_unassigned_pass");
  }

  @ParameterizedTest
  @CsvSource({
    "2026-03-02T07:15:00Z, 7.42, 2026, 20260302T071507Z",
    "2026-03-02T07:15:00.700Z, 0.299, 2026, 20260302T071500Z",
    "2026-01-01T05:30:00+05:45, 0, 2025, 20251231T234500Z",
    "2025-12-31T23:59:59Z, 1, 2026, 20260101T000000Z",
    "+12026-01-01T00:00:00Z, 0, undated, undated",
    "yesterday, 0, undated, undated",
    "2026-03-02T07:15:00Z, 1e300, undated, undated"
  })
  void theInstantOfBlockingInUtc(String started, double occluded, String folder, String time) {
    ObjectNode document = ExampleDocument.unsealed();
    ((ObjectNode) document.get("test")).put("startedAt", started).put("occludedAt", occluded);
    ResultName name = ResultName.of(document);

    assertThat(name.folder()).isEqualTo(folder);
    assertThat(name.stem()).isEqualTo(time + "_SP-014_pass");
  }

  @Test
  void aTestWithoutADate() {
    ObjectNode document = ExampleDocument.unsealed();
    document.remove("test");

    assertThat(ResultName.of(document).folder()).isEqualTo("undated");
  }

  /** What a document says can never choose the folder. */
  @ParameterizedTest
  @ValueSource(strings = {"../../../etc/passwd", "/", "\\", "a\nb", "pass/../x"})
  void verdictsAndIdsStayInTheirFolder(String evil) {
    ObjectNode document = ExampleDocument.unsealed().put("verdict", evil);
    document.put("id", evil + "3f9a1c2e-5b7d");
    ((ObjectNode) document.get("asset")).put("id", evil);
    ResultName name = ResultName.of(document);

    Path file = Path.of(name.folder(), name.withIdDigits(8));
    assertThat(file.normalize()).isEqualTo(file).hasToString(file.toString());
    assertThat(file.getNameCount()).isEqualTo(2);
    assertThat(file.toString()).matches("[A-Za-z0-9._/\\\\-]+");
  }

  @Test
  void aDocumentWithoutIdIsRefused() {
    assertThatThrownBy(() -> ResultName.of(Json.object()))
        .isInstanceOf(IllegalArgumentException.class);
  }

  private static ResultName named(String asset) {
    ObjectNode document = ExampleDocument.unsealed();
    ((ObjectNode) document.get("asset")).put("id", asset);
    return ResultName.of(document);
  }
}
