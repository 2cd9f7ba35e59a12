package org.thumbseal.cli;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.MethodSource;
import org.thumbseal.cli.IndependentCapture.Deviation;
import tools.jackson.databind.node.ObjectNode;

/**
 * Replays of captures from a pump model that shares nothing with this program
 * (fixtures/independent), against what that model knows.
 */
class IndependentCapturesTest {

  @Test
  void everyCaptureHasItsTruth() throws IOException {
    try (Stream<Path> files = Files.list(IndependentCapture.FOLDER)) {
      assertThat(files.map(f -> f.getFileName().toString()).filter(f -> f.endsWith(".log")))
          .containsExactlyInAnyOrderElementsOf(
              IndependentCapture.all().stream().map(c -> c.name() + ".log").toList())
          .hasSize(13);
    }
  }

  static List<IndependentCapture> tests() {
    return IndependentCapture.all().stream().filter(c -> c.truth().has("occludedAt")).toList();
  }

  @ParameterizedTest
  @MethodSource("tests")
  void measuresWhatTheModelKnows(IndependentCapture capture) {
    ObjectNode document = Answer.to("replay", "--json", capture.file()).onlyDocument();

    List<Deviation> deviations = capture.deviations(document);
    assertThat(deviations).isNotEmpty();
    for (Deviation d : deviations) {
      assertThat(d.measured()).as(d.quantity()).isCloseTo(d.truth(), within(d.bound()));
    }
  }

  @Test
  void theBoundsAreHeldAgainstEveryTruth() {
    Map<String, Long> compared =
        tests().stream()
            .flatMap(
                c -> c.deviations(Answer.to("replay", "--json", c.file()).onlyDocument()).stream())
            .collect(Collectors.groupingBy(Deviation::quantity, Collectors.counting()));

    assertThat(compared)
        .isEqualTo(Map.of("riseTime", 10L, "maximumVacuum", 10L, "occludedAt", 12L));
  }

  @ParameterizedTest
  @CsvSource({
    "healthy-100hz,           0, pass,    rise-in-time maximum-reached",
    "healthy-50hz-coarse-adc, 0, pass,    rise-in-time maximum-reached rise-faster-than-usual",
    "bad-line-1-percent,      0, pass,    rise-in-time maximum-reached",
    "altitude,                0, pass,    rise-in-time maximum-reached altitude-adjusted",
    "slow,                    1, fail,    rise-slow maximum-reached",
    "weak,                    1, fail,    rise-slow maximum-low",
    "leak,                    1, fail,    rise-slow maximum-low",
    "filter,                  1, fail,    rise-slow maximum-low",
    "worn,                    1, fail,    rise-slow maximum-low",
    "regulator,               1, fail,    maximum-low rise-in-time",
    "slipped,                 1, invalid, occlusion-slipped",
    "released-early,          1, invalid, released-early",
  })
  void verdictAndReasons(String name, int code, String verdict, String reasons) {
    Answer answer = Answer.to("replay", "--json", file(name));

    assertThat(Answer.verdict(answer.onlyDocument())).isEqualTo(verdict);
    assertThat(Answer.reasons(answer.onlyDocument())).containsExactly(reasons.split(" "));
    assertThat(answer.code()).isEqualTo(code);
    assertThat(answer.err()).isEmpty();
  }

  @Test
  void anInletThatWasNeverBlockedIsNoTest() {
    Answer answer = Answer.to("replay", "--json", file("never-blocked"));

    assertThat(answer.out()).isEmpty();
    assertThat(answer.err())
        .isEqualTo(
            "thumbseal: "
                + file("never-blocked")
                + ": no test in it (the inlet was never blocked)\n");
    assertThat(answer.code()).isEqualTo(1);
  }

  @Test
  void everyBadLineIsCountedByItsCause() throws IOException {
    Map<String, Integer> bad = badLines(file("bad-line-1-percent"));
    assertThat(bad.values().stream().mapToInt(i -> i).sum()).isGreaterThan(50);

    ObjectNode document = Answer.to("replay", "--json", file("bad-line-1-percent")).onlyDocument();

    Map<String, Integer> counted = new TreeMap<>();
    document
        .at("/evidence/rejected")
        .propertyStream()
        .forEach(e -> counted.put(e.getKey(), e.getValue().intValue()));
    assertThat(counted).isEqualTo(bad);
  }

  private static Path file(String name) {
    return IndependentCapture.FOLDER.resolve(name + ".log");
  }

  /** Counted by a checksum of our own: a bit at a time, as the catalogue of CRCs defines it. */
  private static Map<String, Integer> badLines(Path file) throws IOException {
    Map<String, Integer> causes = new TreeMap<>();
    for (String line : Files.readAllLines(file, StandardCharsets.UTF_8)) {
      if (!line.startsWith("#")) {
        String received = line.substring(line.indexOf(' ') + 1);
        int star = received.length() - 5;
        if (star < 0 || !received.substring(star).matches("\\*[0-9A-F]{4}")) {
          causes.merge("no-checksum", 1, Integer::sum);
        } else if (crc(received.substring(0, star))
            != Integer.parseInt(received.substring(star + 1), 16)) {
          causes.merge("wrong-checksum", 1, Integer::sum);
        }
      }
    }
    return causes;
  }

  private static int crc(String body) {
    int crc = 0xFFFF;
    for (char c : unescaped(body).toCharArray()) {
      for (int bit = 7; bit >= 0; bit--) {
        boolean out = (crc >> 15 & 1) != (c >> bit & 1);
        crc = (crc << 1 & 0xFFFF) ^ (out ? 0x1021 : 0);
      }
    }
    return crc;
  }

  private static String unescaped(String text) {
    return java.util.regex.Pattern.compile("\\\\x([0-9A-F]{2})")
        .matcher(text)
        .replaceAll(
            m ->
                java.util.regex.Matcher.quoteReplacement(
                    String.valueOf((char) Integer.parseInt(m.group(1), 16))));
  }
}
