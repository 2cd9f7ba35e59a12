package org.thumbseal.json;

import static java.nio.charset.StandardCharsets.UTF_8;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.offset;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import java.util.regex.MatchResult;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.thumbseal.grade.Criteria;
import org.thumbseal.grade.Criteria.AltitudeRule;
import org.thumbseal.grade.Criteria.DecisionRule;
import org.thumbseal.grade.Criteria.Equipment;
import org.thumbseal.quantity.PressureUnit;

class CriteriaFileTest {
  private static final Path PAGE = Path.of("src/docs/criteria-file.md");
  private static final Pattern EXAMPLE = Pattern.compile("(?s)```json\n(.*?)```");
  private static final Pattern SETTING =
      Pattern.compile("(?m)^\\| `(\\w+)` \\|.*\\| (?:`([^`]+)`|none) \\|$");

  @Test
  void theExampleOfThePageIsReadAsThePageSays() throws Exception {
    Criteria criteria = read(EXAMPLE.matcher(page()).results().findFirst().orElseThrow().group(1));

    assertThat(criteria.name()).isEqualTo("ward pumps, 2026");
    // NIST SP 811 B.8: 1 mmHg = 0.133 322 4 kPa.
    assertThat(criteria.riseKilopascals()).isCloseTo(500 * 0.1333224, offset(1e-4));
    assertThat(criteria.maximumKilopascals()).isCloseTo(600 * 0.1333224, offset(1e-4));
    assertThat(criteria.riseSeconds()).isEqualTo(12);
    assertThat(criteria.usualRiseFrom()).isEqualTo(7);
    assertThat(criteria.openKilopascals()).isEqualTo(4);
    assertThat(criteria.altitudeRule()).isEqualTo(AltitudeRule.STRICT);
    assertThat(criteria.decisionRule()).isEqualTo(DecisionRule.SIMPLE);
    assertThat(criteria.equipment()).isEqualTo(new Equipment(Optional.of(2.0), Optional.of(30.0)));
  }

  @Test
  void theTableOfThePageHasEverySettingWithTheDefaultThatIsInForce() throws Exception {
    List<MatchResult> rows = SETTING.matcher(page()).results().toList();
    Map<String, String> table =
        rows.stream()
            .filter(m -> m.group(2) != null)
            .collect(Collectors.toMap(m -> m.group(1), m -> m.group(2), (a, b) -> a, TreeMap::new));
    String written =
        table.entrySet().stream()
            .map(e -> '"' + e.getKey() + "\": \"" + e.getValue() + '"')
            .collect(Collectors.joining(", ", "{", "}"));

    assertThat(read(written)).isEqualTo(read("{}"));
    assertThatThrownBy(() -> read("{\"x\": \"\"}"))
        .hasMessageEndingWith(
            "the settings are "
                + rows.stream().map(m -> m.group(1)).sorted().collect(Collectors.joining(", ")));
    assertThat(rows).hasSize(table.size() + 2);
  }

  @Test
  void thePageNamesEveryUnitOfPressure() throws Exception {
    List<String> named =
        Pattern.compile("`(\\w+)`")
            .matcher(page().lines().filter(l -> l.startsWith("Units")).findFirst().orElseThrow())
            .results()
            .map((MatchResult m) -> m.group(1))
            .toList();
    assertThat(named)
        .containsAll(Arrays.stream(PressureUnit.values()).map(PressureUnit::symbol).toList());
  }

  @Test
  void whatIsNotSaidIsCommonPractice() throws Exception {
    Criteria criteria = read("{\"name\": \"ours\"}");
    Criteria usual = Criteria.DEFAULT;
    assertThat(criteria)
        .isEqualTo(
            new Criteria(
                "ours",
                usual.riseKilopascals(),
                usual.riseSeconds(),
                usual.usualRiseFrom(),
                usual.maximumKilopascals(),
                usual.openKilopascals(),
                usual.altitudeRule(),
                usual.decisionRule(),
                usual.equipment()));
  }

  @Test
  void theUsualRiseGivesWayToAShorterLimit() throws Exception {
    assertThat(read("{\"riseTimeLimit\": \"5 s\"}").usualRiseFrom()).isEqualTo(5);
    assertThat(read("{\"riseTimeLimit\": \"0.2 min\"}").usualRiseFrom()).isEqualTo(6);
  }

  @ParameterizedTest
  @CsvSource({
    "2 L, 2",
    "500 mL, 0.5",
    "2500mL, 2.5",
  })
  void readsTheVolumeOfTheJar(String written, double litres) throws Exception {
    assertThat(read("{\"jar\": \"" + written + "\"}").equipment().jarLitres()).hasValue(litres);
  }

  /** 1 m3/h = 1000 L / 60 min. */
  @ParameterizedTest
  @CsvSource({
    "30 L/min, 30",
    "1.8 m3/h, 30",
    "3 m3/h, 50",
  })
  void readsTheRatedSpeed(String written, double litresPerMinute) throws Exception {
    assertThat(read("{\"ratedSpeed\": \"" + written + "\"}").equipment().ratedLitresPerMinute())
        .hasValueSatisfying(v -> assertThat(v).isCloseTo(litresPerMinute, offset(1e-9)));
  }

  @Test
  void whatIsPrintedReadsBackAsWhatIsInForce() throws Exception {
    Criteria ours =
        read(
            """
            {"name": "a \\"b\\"", "rise": "0.5 bar", "riseTimeLimit": "0.2 min",
             "decisionRule": "simple", "jar": "750 mL", "ratedSpeed": "1.8 m3/h"}
            """);

    assertThat(read(CriteriaTree.text(Criteria.DEFAULT))).isEqualTo(Criteria.DEFAULT);
    assertThat(ours).isNotEqualTo(Criteria.DEFAULT);
    assertThat(read(CriteriaTree.text(ours))).isEqualTo(ours);
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = ';',
      quoteCharacter = '`',
      value = {
        "{'risetime': '65 kPa'};        has no setting 'risetime'",
        "{'rise': 65};                  rise must be a text in quotes",
        "{'rise': '65'};                rise must be a number with its unit",
        "{'rise': '6.5E1 kPa'};         rise must be a number with its unit",
        "{'rise': '65,0 kPa'};          rise must be a number with its unit",
        "{'rise': '-65 kPa'};           rise must be a number with its unit",
        "{'rise': '65 furlong'};        'furlong' is not the unit of a pressure",
        "{'riseTimeLimit': '65 kPa'};   'kPa' is not the unit of a time",
        "{'rise': '1000 mmHg'};         rise in kPa must be between 1.0 and 100.0, not 133.3",
        "{'rise': '0 kPa'};             rise in kPa must be between 1.0 and 100.0, not 0.0",
        "{'usualRiseTimeFrom': '11 s'}; usualRiseTimeFrom in s must be between 0.0 and 10.0",
        "{'altitudeRule': 'none'};      altitudeRule must be \"scale\" or \"strict\"",
        "{'decisionRule': 'SIMPLE'};    decisionRule must be \"guarded\" or \"simple\"",
        "{'jar': '2'};                  jar must be a number with its unit in quotes, such as \"2 L\"",
        "{'jar': 2};                    jar must be a text in quotes, such as \"2 L\"",
        "{'jar': '2 kPa'};              jar: 'kPa' is not the unit of a volume: L or mL",
        "{'jar': '2 l'};                jar: 'l' is not the unit of a volume: L or mL",
        "{'jar': '20 mL'};              jar in L must be between 0.05 and 50.0, not 0.02",
        "{'jar': null};                 jar must be a text in quotes",
        "{'ratedSpeed': '30'};          ratedSpeed must be a number with its unit",
        "{'ratedSpeed': '30 L'};        'L' is not the unit of a pumping speed: L/min or m3/h",
        "{'ratedSpeed': '30 L/s'};      'L/s' is not the unit of a pumping speed: L/min or m3/h",
        "{'ratedSpeed': '0 L/min'};     ratedSpeed in L/min must be between 0.1 and 1000.0, not 0",
        "{'name': ' '};                 name must be a text in quotes",
        "{'rise': null};                rise must be a text in quotes",
        "{'rise': '65 kPa', 'rise': '66 kPa'}; Duplicate"
      })
  void refusesASlipOfThePenInOneLine(String file, String said) {
    assertThatThrownBy(() -> read(file.replace('\'', '"')))
        .isInstanceOf(JsonRefusedException.class)
        .hasMessageContaining(said)
        .message()
        .doesNotContain("\n");
  }

  private static Criteria read(String text) throws JsonRefusedException {
    return CriteriaFile.of(JsonGate.read(text.getBytes(UTF_8)));
  }

  private static String page() throws Exception {
    return Files.readString(PAGE, UTF_8);
  }
}
