package org.thumbseal.register;

import static java.nio.charset.StandardCharsets.ISO_8859_1;
import static java.nio.charset.StandardCharsets.UTF_16LE;
import static java.nio.charset.StandardCharsets.UTF_8;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.catchThrowableOfType;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.EnumSet;
import java.util.List;
import java.util.Set;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.MethodSource;
import org.thumbseal.register.RegisterMistake.Kind;

/** Every kind of mistake is named with row and column, as the user sees them in a spreadsheet. */
class RegisterMistakesTest {
  private static final LocalDate TODAY = LocalDate.of(2026, 3, 2);

  @TempDir private Path folder;

  /** Kind, file, where: row and column, and words of the line. */
  private static Arguments of(Kind kind, String text, String where, String words) {
    return Arguments.of(kind, text, where, words);
  }

  static Stream<Arguments> mistakes() {
    String long101 = "x".repeat(101);
    return Stream.of(
        of(Kind.EMPTY_FILE, "", "", "empty"),
        of(Kind.EMPTY_FILE, "\r\n \r\n", "", "empty"),
        of(Kind.NOT_TEXT, "PK\u0003\u0004rest", "", "workbook"),
        of(Kind.NO_HEADER, "SP-1,2\nSP-2,2\n", "row 1: ", "no header line"),
        of(Kind.NO_ID_COLUMN, "jar_l,location\n2,Ward 3\n", "row 1: ", "no column 'id'"),
        of(Kind.COLUMN_TWICE, "id,jar_l,Jar_L\nA,2,2\n", "row 1, Jar_L: ", "there twice"),
        of(Kind.COLUMN_TWICE, "id,room,room\nA,2,2\n", "row 1, room: ", "there twice"),
        of(Kind.SPACES, "id, jar_l\nA,2\n", "row 1, jar_l: ", "spaces around the name"),
        of(Kind.MIXED_SEPARATORS, "id;jar_l,status\nA;2\n", "row 1: ", "';' and by ','"),
        of(Kind.MIXED_SEPARATORS, "id;jar_l;status\nA,2,away\n", "row 2: ", "separated by ','"),
        of(Kind.CELL_COUNT, "id,jar_l\nA,2\nB\n", "row 3: ", "has 1 cell, the header line 2"),
        of(Kind.CELL_COUNT, "id,jar_l\nA,2,5\n", "row 2: ", "has 3 cells, the header line 2"),
        of(Kind.NAMELESS_CELL, "id,,jar_l\nA,,2\nB,x,2\n", "row 3, column B: ", "no name"),
        of(
            Kind.UNCLOSED_QUOTE,
            "id,location\nA,\"Ward 3\nB,x\n",
            "row 2, location: ",
            "never closed"),
        of(
            Kind.AFTER_QUOTE,
            "id,location\nA,\"Ward\" 3\n",
            "row 2, location: ",
            "after its closing"),
        of(
            Kind.STRAY_QUOTE,
            "id,description\nA,19\" rack\n",
            "row 2, description: ",
            "quote inside"),
        of(Kind.NUL, "id,location\nA,Wa\0rd\n", "row 2, location: ", "zero bytes"),
        of(Kind.EMPTY_ID, "id,jar_l\nA,2\n,2\n", "row 3, id: ", "missing"),
        of(Kind.DUPLICATE_ID, "ID,jar_l\nA,2\nB,2\nA,2\n", "row 4, ID: ", "in row 2 and in row 4"),
        of(Kind.UNPRINTABLE, "id\nA\u0007B\n", "row 2, id: ", "'A\\u0007B' has characters"),
        of(Kind.UNPRINTABLE, "id\nA\u200bB\n", "row 2, id: ", "'A\\u200BB' has characters"),
        of(Kind.UNPRINTABLE, "id\nA\u00a0B\n", "row 2, id: ", "cannot be seen or typed"),
        of(Kind.UNPRINTABLE, "id,location\nA,x\u001b[2J\n", "row 2, location: ", "no text"),
        of(Kind.TOO_LONG, "id\n" + long101 + "\n", "row 2, id: ", "longer than 100"),
        of(Kind.TOO_LONG, "id,serial\nA," + long101.repeat(5) + "\n", "row 2, serial: ", "500"),
        of(Kind.SPACES, "id\nA \n", "row 2, id: ", "'A ' has spaces around it"),
        of(Kind.SPACES, "id\n\u00a0A\n", "row 2, id: ", "spaces around it"),
        of(Kind.SPACES, "id,jar_l\nA, 2\n", "row 2, jar_l: ", "spaces around it"),
        of(Kind.ID_READ_OTHERWISE, "id\n(8004)X1(10)LOT\n", "row 2, id: ", "read as '(8004)X1'"),
        of(Kind.ID_READ_OTHERWISE, "id\n(01)51022222233336\n", "row 2, id: ", "no serial number"),
        of(Kind.NOT_A_NUMBER, "id,jar_l\nA,two\n", "row 2, jar_l: ", "'two' is not a number"),
        of(Kind.NOT_A_NUMBER, "id,jar_l\nA,2 L\n", "row 2, jar_l: ", "leave it out here"),
        of(Kind.NOT_A_NUMBER, "id,jar_l\nA,-2\n", "row 2, jar_l: ", "not a number"),
        of(Kind.NOT_A_NUMBER, "id,jar_l\nA,1e1\n", "row 2, jar_l: ", "not a number"),
        of(Kind.THOUSANDS, "id,rated_l_min\nA,\"1,000\"\n", "row 2, rated_l_min: ", "thousands"),
        of(Kind.THOUSANDS, "id;rated_l_min\nA;1 000,5\n", "row 2, rated_l_min: ", "thousands"),
        of(Kind.THOUSANDS, "id;rated_l_min\nA;1.500\n", "row 2, rated_l_min: ", "two ways"),
        of(Kind.DECIMAL_SIGN, "id,jar_l\nA,\"2,5\"\n", "row 2, jar_l: ", "write a point"),
        of(Kind.DECIMAL_SIGN, "id;jar_l\nA;2,5\nB;2.5\n", "row 3, jar_l: ", "use one of them"),
        of(Kind.OUT_OF_RANGE, "id,jar_l\nA,0\n", "row 2, jar_l: ", "0.05 to 50 L"),
        of(Kind.OUT_OF_RANGE, "id,jar_l\nA,2000\n", "row 2, jar_l: ", "0.05 to 50 L"),
        of(Kind.OUT_OF_RANGE, "id,rated_l_min\nA,0.05\n", "row 2, rated_l_min: ", "0.1 to 1000"),
        of(Kind.NOT_A_DATE, "id,in_service\nA,02.03.2026\n", "row 2, in_service: ", "2026-02-28"),
        of(Kind.NO_SUCH_DATE, "id,in_service\nA,2026-02-30\n", "row 2, in_service: ", "28 days"),
        of(Kind.NO_SUCH_DATE, "id,in_service\nA,2026-13-01\n", "row 2, in_service: ", "12 months"),
        of(Kind.OUT_OF_RANGE, "id,in_service\nA,0206-01-01\n", "row 2, in_service: ", "1950 to"),
        of(
            Kind.UNKNOWN_STATUS,
            "id,status\nA,broken\n",
            "row 2, status: ",
            "in-use, away, retired"),
        of(Kind.NOT_WHOLE, "id,interval_months\nA,1.5\n", "row 2, interval_months: ", "whole"),
        of(Kind.OUT_OF_RANGE, "id,interval_months\nA,0\n", "row 2, interval_months: ", "1 to 120"),
        of(
            Kind.OUT_OF_RANGE,
            "id,inspection_months\nA,121\n",
            "row 2, inspection_months",
            "1 to 120"),
        of(Kind.OUT_OF_RANGE, "id,sterilise_months\nA,0\n", "row 2, sterilise_months", "1 to 120"),
        of(Kind.CRITERIA_FILE, "id,criteria\nA,none.json\n", "row 2, criteria: ", "no such file"),
        of(Kind.CRITERIA_FILE, "id,criteria\nA,.\n", "row 2, criteria: ", "is a directory"),
        of(Kind.CRITERIA_FILE, "id,criteria\nA,bad.json\n", "row 2, criteria: ", "'limit'"));
  }

  @ParameterizedTest
  @MethodSource("mistakes")
  void isNamedWithRowAndColumn(Kind kind, String text, String where, String words)
      throws IOException {
    Files.writeString(folder.resolve("bad.json"), "{\"limit\": \"2 kPa\"}");

    List<RegisterMistake> mistakes = refused(text.getBytes(UTF_8));

    assertThat(mistakes).extracting(RegisterMistake::kind).containsExactly(kind);
    assertThat(mistakes.get(0).line()).startsWith(where).contains(words).doesNotContain("\n");
  }

  @Test
  void noKindIsWithoutItsCase() {
    Set<Kind> tried = EnumSet.noneOf(Kind.class);
    mistakes().forEach(a -> tried.add((Kind) a.get()[0]));
    // Bytes that are no text, and files that are none, have tests of their own below.
    tried.addAll(Set.of(Kind.UTF_16, Kind.NOT_UTF_8, Kind.TOO_LARGE, Kind.UNREADABLE));

    assertThat(tried)
        .isEqualTo(
            EnumSet.complementOf(EnumSet.of(Kind.ALIKE_ID, Kind.ALIKE_COLUMN, Kind.TO_COME)));
  }

  @Test
  void textOfAnotherEncodingSaysWhereItBeginsAndWhatToDo() throws IOException {
    String table = "id;location\r\nA;\"Ward\r\n3\"\r\nB;Salle d'op\u00e9ration\r\n";

    List<RegisterMistake> latin = refused(table.getBytes(ISO_8859_1));
    List<RegisterMistake> wide = refused(table.getBytes(UTF_16LE));

    assertThat(latin).extracting(RegisterMistake::kind).containsExactly(Kind.NOT_UTF_8);
    assertThat(latin.get(0).line())
        .startsWith("row 3, location: ")
        .contains("byte E9", "save it as CSV UTF-8");
    assertThat(wide).extracting(RegisterMistake::kind).containsExactly(Kind.UTF_16);
    assertThat(refused(("\ufeff" + table).getBytes(UTF_16LE)).get(0).text())
        .contains("save it as CSV UTF-8");
  }

  @Test
  void whatIsNoFileIsSaid() throws IOException {
    assertThat(refused(folder).get(0).line()).isEqualTo("is not a file");
    assertThat(refused(folder.resolve("none.csv")).get(0).line()).isEqualTo("no such file");
    byte[] large = ("id\n" + "x\n".repeat(4 << 20)).getBytes(UTF_8);
    assertThat(refused(large)).extracting(RegisterMistake::kind).containsExactly(Kind.TOO_LARGE);
  }

  @Test
  void allAreSaidAtOnceInTheOrderOfTheSheet() throws IOException {
    String text =
        """
        id;jar_l;status;in_service;interval_months
        A ;2,5;in-use;2024-05-01;1

        B;2.5;gone;2026-02-30;0
        "C
        D";x;;;
        A;2
        """;

    assertThat(refused(text.getBytes(UTF_8)).stream().map(RegisterMistake::line))
        .satisfiesExactly(
            l -> assertThat(l).startsWith("row 2, id: 'A ' has spaces"),
            l -> assertThat(l).startsWith("row 4, jar_l: '2.5' has a decimal '.'"),
            l -> assertThat(l).startsWith("row 4, status: 'gone'"),
            l -> assertThat(l).startsWith("row 4, in_service: '2026-02-30'"),
            l -> assertThat(l).startsWith("row 4, interval_months: '0'"),
            l -> assertThat(l).startsWith("row 5, id: 'C\\u000AD' has characters"),
            l -> assertThat(l).startsWith("row 5, jar_l: 'x' is not a number"),
            l -> assertThat(l).startsWith("row 6: has 2 cells"));
  }

  @ParameterizedTest
  @MethodSource("warnings")
  void isOnlyWorthALook(Kind kind, String text, String line) throws Exception {
    Register register = RegisterFile.read(file(text.getBytes(UTF_8)), TODAY);

    assertThat(register.warnings()).extracting(RegisterMistake::kind).containsExactly(kind);
    assertThat(register.warnings().get(0).line()).isEqualTo(line);
  }

  static Stream<Arguments> warnings() {
    return Stream.of(
        Arguments.of(
            Kind.ALIKE_ID,
            "id\nSP-O14\nSP-014\n",
            "row 3, id: 'SP-014' is easily taken for 'SP-O14' in row 2"),
        Arguments.of(
            Kind.ALIKE_ID,
            "id\nsp-1\nSP-1\n",
            "row 3, id: 'SP-1' is easily taken for 'sp-1' in row 2"),
        Arguments.of(
            Kind.ALIKE_ID,
            "id\nSP-1\n\u0405\u0420-1\n",
            "row 3, id: '\u0405\u0420-1' is easily taken for 'SP-1' in row 2"),
        Arguments.of(
            Kind.ALIKE_COLUMN,
            "id,Jar L\nA,2\n",
            "row 1, Jar L: is kept, but not used; if you mean it, call it jar_l"),
        Arguments.of(
            Kind.TO_COME,
            "id,in_service\nA,2026-03-03\n",
            "row 2, in_service: 2026-03-03 is still to come"));
  }

  @Test
  void idsThatOnlyBeginAlikeAreNotTakenForEachOther() throws Exception {
    String many = "id\nSP-1\nSP-2\nSP-11\nSP-012\nSPX-1\nST-1\n";

    assertThat(RegisterFile.read(file(many.getBytes(UTF_8)), TODAY).warnings()).isEmpty();
  }

  private Path file(byte[] bytes) throws IOException {
    return Files.write(folder.resolve("pumps.csv"), bytes);
  }

  private List<RegisterMistake> refused(byte[] bytes) throws IOException {
    return refused(file(bytes));
  }

  private static List<RegisterMistake> refused(Path file) {
    return catchThrowableOfType(RegisterRefused.class, () -> RegisterFile.read(file, TODAY))
        .mistakes();
  }
}
