package org.thumbseal.register;

import static java.nio.charset.StandardCharsets.UTF_8;
import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.thumbseal.grade.Criteria;
import org.thumbseal.grade.Criteria.Equipment;
import org.thumbseal.pipeline.KnownPumps;
import org.thumbseal.register.RegisteredAsset.Intervals;

/** What spreadsheets of several locales write is read as the same register. */
class RegisterFileTest {
  private static final LocalDate TODAY = LocalDate.of(2026, 3, 2);

  @TempDir private Path folder;

  @Test
  void theTemplateIsARegister() throws Exception {
    Register register = read(String.join("\n", RegisterTemplate.lines()) + "\n");

    assertThat(register.warnings()).isEmpty();
    assertThat(register.assets())
        .extracting(RegisteredAsset::id)
        .containsExactly("SP-014", "SP-021");
    RegisteredAsset second = register.of("SP-021").orElseThrow();
    assertThat(second.label().description()).contains("suction pump, small");
    assertThat(second.equipment()).isEqualTo(new Equipment(Optional.of(0.5), Optional.of(18.0)));
    assertThat(second.inService()).contains(LocalDate.of(2024, 11, 18));
    assertThat(second.status()).isEqualTo(Status.AWAY);
    assertThat(second.intervals()).isEqualTo(Intervals.USUAL);
  }

  @ParameterizedTest
  @CsvSource({
    "',', '.', '\n', false",
    "',', '.', '\r\n', true",
    "';', ',', '\r\n', true",
    "';', '.', '\r', false",
    "'\t', ',', '\n', true",
    "'\t', '.', '\r\n', false",
  })
  void separatorsDecimalSignsLineEndsAndMarksMakeNoDifference(
      String separator, String point, String end, boolean mark) throws Exception {
    String text =
        "Location|JAR_L|room no.|id|interval_months\n"
            + "\"Ward 3\nbed \"\"7\"\"\"|2.5|x y|SP-014|3\n"
            + "|||SP-015|\n"
            + "||||\n";
    String file = text.replace("|", separator).replace("\n", end).replace("2.5", "2" + point + "5");
    Register register = read((mark ? "\ufeff" : "") + file);

    assertThat(register.assets()).extracting(RegisteredAsset::row).containsExactly(2, 3);
    RegisteredAsset first = register.of("SP-014").orElseThrow();
    assertThat(first.label().location()).contains("Ward 3" + end + "bed \"7\"");
    assertThat(first.equipment().jarLitres()).contains(2.5);
    assertThat(first.intervals().check()).isEqualTo(3);
    assertThat(first.others()).isEqualTo(Map.of("room no.", "x y"));
    assertThat(register.otherColumns()).containsExactly("room no.");
    assertThat(register.of("SP-015").orElseThrow().status()).isEqualTo(Status.IN_USE);
    assertThat(register.of("SP-015").orElseThrow().others()).isEmpty();
  }

  /** RFC 4180 section 2: the examples of rules 5, 6 and 7, with names for columns. */
  @Test
  void theExamplesOfTheStandardAreReadAsItSays() throws Exception {
    Register register =
        read(
            "id,b,c\r\n\"aaa\",\"bbb\",\"ccc\"\r\nzzz,yyy,xxx\r\n"
                + "aa2,\"b\r\nbb\",\"ccc\"\r\naa3,\"b\"\"bb\",\"ccc\"");

    assertThat(register.of("aaa").orElseThrow().others()).isEqualTo(Map.of("b", "bbb", "c", "ccc"));
    assertThat(register.of("zzz").orElseThrow().others()).isEqualTo(Map.of("b", "yyy", "c", "xxx"));
    assertThat(register.of("aa2").orElseThrow().others()).containsEntry("b", "b\r\nbb");
    assertThat(register.of("aa3").orElseThrow().others()).containsEntry("b", "b\"bb");
  }

  @Test
  void criteriaLieBesideTheRegister() throws Exception {
    Files.createDirectory(folder.resolve("limits"));
    Files.writeString(folder.resolve("limits/ward.json"), "{\"name\": \"ward\", \"jar\": \"3 L\"}");

    RegisteredAsset asset = read("id,criteria,jar_l\nA,limits/ward.json,2\n").of("A").orElseThrow();

    assertThat(asset.criteria().orElseThrow().file()).isEqualTo("limits/ward.json");
    assertThat(asset.criteria().orElseThrow().criteria().name()).isEqualTo("ward");
  }

  @Test
  void aChangeIsTakenUpAndABrokenOneToldOnce() throws Exception {
    Path file = write("id,jar_l\nA,2\n");
    KeptRegister kept = new KeptRegister(file, () -> TODAY, Optional.empty());
    List<String> said = new ArrayList<>();
    KnownPumps first = kept.pumps();

    assertThat(first.now(said::add)).isSameAs(first);
    write("id,jar_l\nA,3\n");
    KnownPumps second = first.now(said::add);
    write("id,jar_l\nA,x\nA,y\n");
    KnownPumps third = second.now(said::add);
    third.now(said::add);
    write("id,jar_l\nA,4\n");
    KnownPumps fourth = third.now(said::add);

    assertThat(first.of("A").orElseThrow().equipment().jarLitres()).contains(2.0);
    assertThat(second.of("A").orElseThrow().equipment().jarLitres()).contains(3.0);
    assertThat(third).isSameAs(second);
    assertThat(fourth.of("A").orElseThrow().equipment().jarLitres()).contains(4.0);
    assertThat(said)
        .containsExactly(
            file + ": the register has changed and is taken up",
            file
                + ": row 2, jar_l: 'x' is not a number; and 2 more; the register of before is used"
                + " on",
            file + ": the register has changed and is taken up");
  }

  @Test
  void optionsGoBeforeTheRegister() throws Exception {
    Files.writeString(folder.resolve("ward.json"), "{\"name\": \"ward\"}");
    Path file = write("id,jar_l,rated_l_min,criteria\nA,2,30,ward.json\n");
    Criteria given = Criteria.DEFAULT;
    Criteria withJar =
        new Criteria(
            "mine",
            given.riseKilopascals(),
            given.riseSeconds(),
            given.usualRiseFrom(),
            given.maximumKilopascals(),
            given.openKilopascals(),
            given.altitudeRule(),
            given.decisionRule(),
            new Equipment(Optional.of(1.0), Optional.empty()));

    var pump =
        new KeptRegister(file, () -> TODAY, Optional.of(withJar)).pumps().of("A").orElseThrow();

    assertThat(pump.criteria()).isEmpty();
    assertThat(pump.equipment()).isEqualTo(new Equipment(Optional.empty(), Optional.of(30.0)));
  }

  private Path write(String text) throws IOException {
    return Files.write(folder.resolve("pumps.csv"), text.getBytes(UTF_8));
  }

  private Register read(String text) throws Exception {
    return RegisterFile.read(write(text), TODAY);
  }
}
