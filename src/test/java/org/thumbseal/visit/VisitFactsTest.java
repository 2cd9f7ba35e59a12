package org.thumbseal.visit;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

class VisitFactsTest {
  private static Check jar(String part, String reason) {
    return new Check(CheckItem.JAR, CheckState.REPLACED, Optional.of(part), Optional.of(reason));
  }

  private static Check found(Map<String, String> facts, CheckItem item) {
    return VisitFacts.checks(facts).stream()
        .filter(check -> check.item() == item)
        .findFirst()
        .orElseThrow();
  }

  @Test
  void allItemsAreThereWhenAnyWasSaid() {
    Visit visit =
        new Visit(Optional.of("SP-014"), List.of(Check.of(CheckItem.CORD, CheckState.OK)));
    Map<String, String> facts = VisitFacts.of(visit);

    assertThat(facts).isEqualTo(Map.of("asset", "SP-014", "check-cord", "ok"));
    assertThat(VisitFacts.checks(facts))
        .extracting(Check::item)
        .containsExactly(CheckItem.values());
    assertThat(VisitFacts.checks(facts))
        .filteredOn(check -> check.state() != CheckState.NOT_CHECKED)
        .isEqualTo(visit.checks());
    assertThat(VisitFacts.checks(Map.of("asset", "SP-014"))).isEmpty();
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "jar 2 L",
        "a; reason: b",
        "100 %",
        "%3B",
        "%25 and %3B;",
        "part:",
        ";;",
        "n° é 漢"
      })
  void wordsComeBackAsTheyWere(String words) {
    Check said = jar(words, words);
    Map<String, String> facts = VisitFacts.of(new Visit(Optional.empty(), List.of(said)));

    assertThat(found(facts, CheckItem.JAR)).isEqualTo(said);
  }

  @Test
  void wordsAreMadeFitForALine() {
    Check said = jar("a\r\n# asset X\u0000\uD800", "x".repeat(300));

    assertThat(said.part()).contains("a # asset X \uFFFD");
    assertThat(said.reason()).contains("x".repeat(200));
    assertThat(jar(" \n ", "").part()).isEmpty();
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "ok                          | OK          | ",
        "Not-OK                      | NOT_OK      | ",
        "replaced; part: new jar     | REPLACED    | new jar",
        "replaced;part:new jar;x: y  | REPLACED    | new jar",
        "replaced; reason: ; part:   | REPLACED    | ",
        "good                        | NOT_CHECKED | ",
      })
  void theHeaderIsReadTolerantly(String text, CheckState state, String part) {
    Map<String, String> facts = Map.of("check-jar", text, "check-cord", "ok", "check-lid", "ok");

    assertThat(found(facts, CheckItem.JAR).state()).isEqualTo(state);
    assertThat(found(facts, CheckItem.JAR).part()).isEqualTo(Optional.ofNullable(part));
  }

  @Test
  void aStartComesBackAsItWas() {
    SaidStart said = new SaidStart(12_345_678, StartedBy.PAGE);

    assertThat(said.text()).isEqualTo("12.345678 page");
    assertThat(SaidStart.parse(said.text())).contains(said);
    assertThat(SaidStart.parse(" 7   command "))
        .contains(new SaidStart(7_000_000, StartedBy.COMMAND));
  }

  @ParameterizedTest
  @ValueSource(
      strings = {"", "page", "7 key", "7 somebody", "-7 page", "1e3 page", "9999999999 page"})
  void whatIsNoStartIsNone(String text) {
    assertThat(SaidStart.parse(text)).isEmpty();
  }
}
