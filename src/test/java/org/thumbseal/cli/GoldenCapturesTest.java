package org.thumbseal.cli;

import static org.assertj.core.api.Assertions.assertThat;

import com.networknt.schema.InputFormat;
import com.networknt.schema.Schema;
import com.networknt.schema.SchemaRegistry;
import com.networknt.schema.SpecificationVersion;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.security.MessageDigest;
import java.util.Arrays;
import java.util.HexFormat;
import java.util.List;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.MethodSource;
import org.thumbseal.capture.Capture;
import org.thumbseal.capture.CaptureLine;
import org.thumbseal.capture.CaptureReader;
import org.thumbseal.json.SchemaDocument;
import org.thumbseal.simulate.SimulationKind;
import tools.jackson.databind.node.ObjectNode;

/** The golden pairs of fixtures/captures, and the laws that they obey. */
class GoldenCapturesTest {
  private static final Path FOLDER = Path.of("fixtures", "captures");
  private static final List<String> BY_HAND =
      List.of(
          "wraps",
          "cut-in-mid-line",
          "crlf",
          "replugged",
          "no-test",
          "capture-version-1",
          "plain-lines");
  private static final Schema RESULT =
      SchemaRegistry.withDefaultDialect(SpecificationVersion.DRAFT_2020_12)
          .getSchema(SchemaDocument.RESULT.text(), InputFormat.JSON);

  static List<String> names() throws IOException {
    return files(".log");
  }

  private static List<String> files(String extension) throws IOException {
    try (Stream<Path> files = Files.list(FOLDER)) {
      return files
          .map(f -> f.getFileName().toString())
          .filter(f -> f.endsWith(extension))
          .map(f -> f.substring(0, f.length() - extension.length()))
          .sorted()
          .toList();
    }
  }

  @Test
  void nothingIsUnpaired() throws IOException {
    assertThat(files(".json")).isEqualTo(files(".log"));
    try (Stream<Path> files = Files.list(FOLDER)) {
      assertThat(files).hasSize(2 * names().size() + 1).contains(FOLDER.resolve("README.md"));
    }
  }

  @Test
  void everyKindIsThere() throws IOException {
    List<String> expected =
        Stream.concat(
                Arrays.stream(SimulationKind.values())
                    .filter(k -> k != SimulationKind.IDLE)
                    .map(SimulationKind::code),
                BY_HAND.stream())
            .sorted()
            .toList();
    assertThat(names()).isEqualTo(expected);
  }

  @ParameterizedTest
  @MethodSource("names")
  void answersAsItAlwaysDid(String name) throws IOException {
    assertThat(replay(name).out()).isEqualTo(Files.readString(FOLDER.resolve(name + ".json")));
  }

  @ParameterizedTest
  @MethodSource("names")
  void everyAnswerIsOfThePublishedShape(String name) {
    for (ObjectNode document : replay(name).documents()) {
      assertThat(RESULT.validate(document)).isEmpty();
    }
  }

  /** RFC 9562, UUID version 8: the digest of the capture but for version and variant. */
  @ParameterizedTest
  @MethodSource("names")
  void theIdOfTheFirstTestFollowsFromTheCaptureAlone(String name) throws Exception {
    String digest =
        HexFormat.of()
            .formatHex(
                MessageDigest.getInstance("SHA-256")
                    .digest(Files.readAllBytes(FOLDER.resolve(name + ".log"))));
    List<ObjectNode> documents = replay(name).documents();
    for (ObjectNode document : documents) {
      assertThat(document.at("/evidence/sha256").stringValue()).isEqualTo(digest);
    }
    List<String> ids = documents.stream().map(d -> d.get("id").stringValue()).toList();
    assertThat(ids).doesNotHaveDuplicates();
    if (!ids.isEmpty()) {
      String id = ids.get(0).replace("-", "");
      assertThat(id.charAt(12)).isEqualTo('8');
      assertThat(id.charAt(16)).isIn('8', '9', 'a', 'b');
      assertThat(without(id)).isEqualTo(without(digest.substring(0, 32)));
    }
  }

  private static String without(String digits) {
    return digits.substring(0, 12) + digits.substring(13, 16) + digits.substring(17);
  }

  /** What each kind was made to show; see their descriptions. */
  @ParameterizedTest
  @CsvSource({
    "sound,                  0, pass, rise-in-time maximum-reached",
    "slow,                   1, fail, rise-slow maximum-reached",
    "slipped,                1, invalid, occlusion-slipped",
    "released-early,         1, invalid, released-early",
    "never-blocked,          1, '', ''",
    "altitude,               0, pass, rise-in-time maximum-reached altitude-adjusted",
    "leak,                   1, fail, rise-slow maximum-low",
    "restriction,            1, fail, rise-slow near-limit",
    "worn-pump,              1, fail, rise-slow maximum-low",
    "control-not-at-maximum, 1, fail, maximum-low rise-in-time",
    "reduced-volume,         0, pass, rise-in-time maximum-reached rise-faster-than-usual",
    "blocked-inlet,          1, fail, rise-slow maximum-reached open-vacuum-high",
    "no-vacuum,              1, fail, rise-not-reached maximum-low",
    "late,                   0, pass, rise-in-time maximum-reached",
    "already-running,        0, pass, rise-in-time maximum-reached",
    "off-while-blocked,      0, pass, rise-in-time maximum-reached",
    "pinched-hose,           0, pass, rise-in-time maximum-reached",
    "two-tests,              0, pass pass, 'rise-in-time maximum-reached, rise-in-time maximum-reached'",
    "noisy-line,             0, pass, rise-in-time maximum-reached",
    "gap,                    1, invalid, gap-in-test",
    "restart,                1, invalid, gap-in-test sensor-fault",
    "range-clipped,          1, invalid, range-clipped",
    "sensor-fault,           1, invalid, sensor-fault",
    "wraps,                  0, pass, rise-in-time maximum-reached",
    "cut-in-mid-line,        1, invalid, gap-in-test",
    "crlf,                   0, pass, rise-in-time maximum-reached",
    "replugged,              1, pass fail, 'rise-in-time maximum-reached, rise-slow maximum-reached'",
    "no-test,                1, '', ''",
    "capture-version-1,      0, pass, rise-in-time maximum-reached",
    "plain-lines,            0, pass, rise-in-time maximum-reached unchecked-line",
  })
  void verdictAndReasons(String name, int code, String verdicts, String reasons) {
    Answer answer = replay(name);
    List<ObjectNode> documents = answer.documents();

    assertThat(documents.stream().map(Answer::verdict).collect(Collectors.joining(" ")))
        .isEqualTo(verdicts);
    assertThat(
            documents.stream()
                .map(d -> String.join(" ", Answer.reasons(d)))
                .collect(Collectors.joining(", ")))
        .isEqualTo(reasons);
    assertThat(answer.code()).isEqualTo(code);
  }

  @Test
  void theTableAboveLeavesNoneOut() throws Exception {
    CsvSource table =
        GoldenCapturesTest.class
            .getDeclaredMethod(
                "verdictAndReasons", String.class, int.class, String.class, String.class)
            .getAnnotation(CsvSource.class);
    assertThat(Arrays.stream(table.value()).map(row -> row.substring(0, row.indexOf(','))).sorted())
        .isEqualTo(names());
  }

  /** Counter and clock have 32 bits; both begin again within the rise. */
  @Test
  void theWrapsAreWithinTheRise() throws Exception {
    ObjectNode document = replay("wraps").onlyDocument();
    double from = document.at("/test/occludedAt").doubleValue();
    double to = from + Answer.measured(document, "riseTime");

    assertThat(wrapOf("wraps", 1)).isBetween(from, to);
    assertThat(wrapOf("wraps", 2)).isBetween(from, to);
  }

  /** When a field of the samples first became smaller, s. */
  private static double wrapOf(String name, int field) throws Exception {
    long before = 0;
    for (CaptureLine line : read(name).lines()) {
      if (line.text().startsWith("S,")) {
        long now = Long.parseLong(line.text().split("[,*]", -1)[field]);
        if (now < before) {
          return line.hostMicros() / 1e6;
        }
        before = now;
      }
    }
    throw new AssertionError("field " + field + " does not wrap");
  }

  /** A result that was graded once must be gradable for ever: this file is never to change. */
  @Test
  void captureOfVersion1StaysReadable() throws Exception {
    byte[] bytes = Files.readAllBytes(FOLDER.resolve("capture-version-1.log"));
    assertThat(HexFormat.of().formatHex(MessageDigest.getInstance("SHA-256").digest(bytes)))
        .isEqualTo("32c5d2d30b161c9d9d1c7cc7bc7b5328eea0796128ec8d7e559b61725a86af45");

    Capture capture = CaptureReader.read(bytes);
    assertThat(capture.header().started()).isEqualTo("2026-03-02T07:15:00Z");
    assertThat(capture.header().facts())
        .containsEntry("source", "tcp:pressure-7:4001")
        .containsEntry("asset", "SP-014")
        .containsEntry("sensor", "SIM-01")
        .containsEntry("ambient-kpa", "100.9")
        .containsEntry("jar-l", "0.3")
        .containsEntry("note", "written by hand, from a simulated capture")
        .containsEntry("a-key-nobody-knows", "yet")
        .hasSize(7);
    assertThat(capture.unreadable()).isEqualTo(1);
    assertThat(capture.lines()).hasSize(562);
    assertThat(capture.lines())
        .extracting(CaptureLine::text)
        .contains("S,12\u0000\u00FF,\\*12", "Z,a,record,of,later*112F", "");
  }

  @Test
  void whatTheHeaderOfVersion1SaysCounts() {
    ObjectNode document = replay("capture-version-1").onlyDocument();

    assertThat(document.at("/asset/id").stringValue()).isEqualTo("SP-014");
    assertThat(document.at("/test/source").stringValue()).isEqualTo("tcp:pressure-7:4001");
    assertThat(document.at("/test/jar/value").doubleValue()).isEqualTo(0.3);
    assertThat(document.at("/test/ambient/quantity/value").doubleValue()).isEqualTo(100.9);
    assertThat(document.at("/test/ambient/from").stringValue()).isEqualTo("given");
    assertThat(document.at("/evidence/rejected").toString())
        .isEqualTo("{\"no-checksum\":2,\"unreadable\":1,\"wrong-checksum\":1}");
  }

  @Test
  void lineEndsOfAnEditorChangeNothingThatIsMeasured() throws Exception {
    String text = Files.readString(FOLDER.resolve("crlf.log"), StandardCharsets.UTF_8);
    assertThat(text).contains("\r\n").doesNotContainPattern("[^\r]\n");

    assertThat(CaptureReader.read(text.getBytes(StandardCharsets.UTF_8)))
        .isEqualTo(CaptureReader.read(text.replace("\r\n", "\n").getBytes(StandardCharsets.UTF_8)));
  }

  /** Each test is graded by the sensor it was recorded with. */
  @Test
  void anotherSensorPluggedInLaterDoesNotCountForTheTestBefore() {
    List<ObjectNode> documents = replay("replugged").documents();

    assertThat(documents)
        .extracting(d -> d.at("/test/sensor/reference").stringValue())
        .containsExactly("gauge", "absolute");
  }

  private static Capture read(String name) throws Exception {
    return CaptureReader.read(Files.readAllBytes(FOLDER.resolve(name + ".log")));
  }

  private static Answer replay(String name) {
    return Answer.to("replay", "--json", FOLDER.resolve(name + ".log"));
  }
}
