package org.thumbseal.cli;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** What {@code replay --explain} prints is enough to check a result by hand. */
class ExplainTest {
  private static final int WIDTH = 100;
  private static final String BEGIN = "  Zero of the sensor";

  /** Combined, then expanded uncertainty at the foot of a budget. */
  private static final Pattern FOOT =
      Pattern.compile("^    u +([0-9.]+) +100\\.0 %$|^    U = k u +k = 2 +([0-9.]+)$");

  /** A line of a budget: u(x), sensitivity, contribution, share. */
  private static final Pattern LINE =
      Pattern.compile(
          "^    .* ([-0-9.e]+)(?: \\S+)? +(?:normal|rectangular|triangular) +"
              + "([-0-9.e]+)(?: \\S+)? +([0-9.]+) +([0-9.]+) %$");

  static List<String> names() throws IOException {
    return GoldenCapturesTest.names();
  }

  private static List<String> explained(String name) {
    return Answer.to("replay", "--explain", Path.of("fixtures", "captures", name + ".log"))
        .out()
        .lines()
        .toList();
  }

  @ParameterizedTest
  @MethodSource("names")
  void fitsIntoAHundredColumns(String name) {
    List<String> lines = explained(name);
    boolean explanation = false;
    for (String line : lines) {
      explanation = line.equals(BEGIN) || (explanation && !line.matches("[A-Z]+  .*"));
      if (explanation) {
        assertThat(line.length()).as(line).isLessThanOrEqualTo(WIDTH);
      }
    }
    assertThat(lines.contains(BEGIN)).isEqualTo(!lines.isEmpty());
  }

  /** With nothing but a pocket calculator and what is printed. */
  @ParameterizedTest
  @MethodSource("names")
  void everyTableAddsUp(String name) {
    double squares = 0;
    double shares = 0;
    List<Double> feet = new ArrayList<>();
    for (String line : explained(name)) {
      Matcher row = LINE.matcher(line);
      Matcher foot = FOOT.matcher(line);
      if (row.matches()) {
        double contribution = Math.abs(number(row, 1) * number(row, 2));
        assertThat(number(row, 3)).as(line).isCloseTo(contribution, within(lastDigit(row, 3)));
        squares += number(row, 3) * number(row, 3);
        shares += number(row, 4);
      } else if (foot.matches() && foot.group(1) != null) {
        double u = number(foot, 1);
        assertThat(Math.sqrt(squares)).as(line).isCloseTo(u, within(2e-3 * u));
        assertThat(shares).isCloseTo(100, within(0.31));
        feet.add(u);
        squares = 0;
        shares = 0;
      } else if (foot.matches()) {
        double last = feet.get(feet.size() - 1);
        assertThat(number(foot, 2)).as(line).isCloseTo(2 * last, within(1e-3 * last));
      }
    }
    long headings = explained(name).stream().filter(line -> line.endsWith("(k = 2)")).count();
    assertThat((long) feet.size()).isEqualTo(headings);
  }

  private static double number(Matcher matcher, int group) {
    return Double.parseDouble(matcher.group(group));
  }

  /** One unit in the last place printed, and the rounding of the two factors. */
  private static double lastDigit(Matcher matcher, int group) {
    String text = matcher.group(group);
    int places = text.indexOf('.') < 0 ? 0 : text.length() - text.indexOf('.') - 1;
    return Math.pow(10, -places) + 1e-3 * number(matcher, group);
  }

  @Test
  void saysHowTheValuesWereReached() {
    assertThat(String.join(" ", explained("sound")).replaceAll(" +", " "))
        .contains(
            "Known from: quiet start.",
            "Blocked at 11.748 s; 65.10 kPa (0.10 open and a rise of 65.00) crossed at 19.253 s,"
                + " climbing by 4.152 kPa/s.",
            "Highest 1 s mean; those between 43.50 and 45.85 s",
            "rise time 7.50 s 0.45 s at most 10.00 s 9.55 to 10.45 pass > 99.9 %",
            "maximum vacuum 88.92 kPa 2.57 kPa at least 80.00 kPa 77.43 to 82.57 pass > 99.9 %",
            "Verdict: pass (rise-in-time, maximum-reached).");
  }

  @Test
  void saysWhatBecameOfALimitNearTheValue() {
    assertThat(String.join(" ", explained("restriction")).replaceAll(" +", " "))
        .contains(
            "maximum vacuum 79.41 kPa 2.29 kPa at least 80.00 kPa 77.71 to 82.29"
                + " inconclusive 30.3 %");
  }

  @Test
  void aRiseThatWasNotReachedIsSaidSo() {
    assertThat(String.join("\n", explained("no-vacuum")))
        .containsPattern("rise time +not timed +at most 10\\.00 s")
        .contains("The vacuum climbed by 10.24 kPa at most; 65.00 kPa are asked for.");
  }

  @Test
  void isForPeopleAndNotForPrograms() {
    Answer answer = Answer.to("replay", "--json", "--explain", "fixtures/captures/sound.log");

    assertThat(answer.code()).isEqualTo(2);
    assertThat(answer.out()).isEmpty();
    assertThat(answer.err())
        .startsWith("thumbseal: --explain is for people and --json for programs: give one of them")
        .hasLineCount(1);
  }
}
