package org.thumbseal.archive;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.thumbseal.calibration.Calibration;
import org.thumbseal.calibration.CalibrationFacts;
import org.thumbseal.calibration.CalibrationPoint;
import org.thumbseal.calibration.ReferenceGauge;
import org.thumbseal.json.CalibrationTree;
import org.thumbseal.json.Canonical;
import org.thumbseal.json.ExampleDocument;
import org.thumbseal.json.Json;
import org.thumbseal.seal.ChainEnd;
import org.thumbseal.seal.Head;
import org.thumbseal.seal.LedgerPosition;
import org.thumbseal.seal.Seal;
import org.thumbseal.seal.SealAnswer;
import org.thumbseal.seal.Sha256;
import org.thumbseal.seal.SigningKey;
import org.thumbseal.seal.TrustStore;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.node.ObjectNode;

/**
 * Every bit and every line of what is sealed, through the very check that {@code verify} makes of a
 * file. Accepted is what gets a good seal, be it by a trusted key or by an unknown one.
 */
class TamperTest {
  private static final SigningKey KEY = SigningKey.generate();

  @TempDir private Path folder;
  private Path file;
  private final Verification verification = new Verification(TrustStore.of(KEY.verifyingKey()));

  @BeforeEach
  void place() {
    file = folder.resolve("tampered.json");
  }

  private static ObjectNode result() {
    return Seal.seal(ExampleDocument.unsealed(), LedgerPosition.FIRST, KEY);
  }

  /** A head has no place in a chain, and is known by its name. */
  private ObjectNode head() {
    file = folder.resolve(ResultDirectory.HEAD);
    ChainEnd end = new ChainEnd(KEY.verifyingKey().kid(), 7, Sha256.hex(new byte[0]));
    ChainEnd earlier = new ChainEnd(SigningKey.generate().verifyingKey().kid(), 3, end.digest());
    return new Head(end, List.of(earlier), "2026/x.json").sealed(KEY);
  }

  private static ObjectNode calibration() throws Exception {
    CalibrationFacts facts =
        new CalibrationFacts(
            "tp-01",
            Instant.parse("2026-03-02T07:15:07Z"),
            LocalDate.parse("2027-03-02"),
            new ReferenceGauge("RG-7", "C-2211", 0.25, 2),
            0.1,
            Optional.of(24.0),
            Optional.empty());
    List<CalibrationPoint> points =
        List.of(
            new CalibrationPoint(0.4, 0),
            new CalibrationPoint(40.9, 40.0667),
            new CalibrationPoint(81.6, 80));
    Calibration calibration = Calibration.of("3f9a1c2e-5b7d", facts, points);
    return Seal.seal(CalibrationTree.of(calibration), LedgerPosition.FIRST, KEY);
  }

  @Test
  void noBitOfAResult() throws Exception {
    byte[] document = canonical(result());

    assertThat(document).hasSizeBetween(2_500, 3_500);
    assertThat(flipsAccepted(document)).isEmpty();
  }

  @Test
  void noBitOfAHead() throws Exception {
    assertThat(flipsAccepted(canonical(head()))).isEmpty();
  }

  /**
   * One bit makes E of e, and 1E-7 is the same number as 1e-7: another spelling of the content that
   * was sealed. Nothing else gets through.
   */
  @Test
  void noBitOfACalibrationButTheSpellingOfAnExponent() throws Exception {
    byte[] document = canonical(calibration());
    List<String> exponents = new ArrayList<>();
    for (int i = 1; i < document.length - 1; i++) {
      boolean exponent =
          document[i] == 'e' && Character.isDigit(document[i - 1]) && document[i + 1] == '-';
      if (exponent && !insideString(document, i)) {
        exponents.add("e to E at " + i);
      }
    }

    assertThat(flipsAccepted(document)).containsExactlyElementsOf(exponents);
  }

  private static boolean insideString(byte[] document, int index) {
    String before = new String(document, 0, index, StandardCharsets.UTF_8);
    return before.chars().filter(c -> c == '"').count() % 2 == 1;
  }

  /**
   * Of the four characters that JSON skips, one bit turns a tab into a carriage return and back.
   * Such a flip leaves the content as it was; each is accepted, and nothing else.
   */
  @Test
  void betweenMembersOnlyWhiteSpaceForWhiteSpace() throws Exception {
    String text = pretty(head()).replace("\n", "\r\n").replace("  ", "\t");
    List<String> harmless = new ArrayList<>();
    for (int i = 0; i < text.length(); i++) {
      if (text.charAt(i) == '\r' || text.charAt(i) == '\t') {
        harmless.add((text.charAt(i) == '\r' ? "\\r to \\t at " : "\\t to \\r at ") + i);
      }
    }

    assertThat(harmless).hasSizeGreaterThan(10);
    assertThat(flipsAccepted(text.getBytes(StandardCharsets.UTF_8)))
        .containsExactlyElementsOf(harmless);
  }

  @Test
  void noLineOfAResult() throws Exception {
    assertThat(linesNotMissed(result())).isEmpty();
  }

  @Test
  void noLineOfAHead() throws Exception {
    assertThat(linesNotMissed(head())).isEmpty();
  }

  @Test
  void noLineOfACalibration() throws Exception {
    assertThat(linesNotMissed(calibration())).isEmpty();
  }

  @Test
  void anotherLayoutOrOrderIsTheSameDocument() throws Exception {
    assertAnyLayout(result());
    assertAnyLayout(calibration());
    assertAnyLayout(head());
  }

  private void assertAnyLayout(ObjectNode sealed) throws IOException {
    String pretty = pretty(sealed);
    for (String text :
        List.of(
            pretty,
            pretty.replace("\n", "\r\n").replace("  ", "\t"),
            reversed(sealed).toString(),
            pretty(reversed(sealed)))) {
      assertThat(answer(text.getBytes(StandardCharsets.UTF_8)))
          .as(text)
          .contains(SealAnswer.TRUSTED_KEY);
    }
  }

  private static byte[] canonical(ObjectNode sealed) {
    return Canonical.bytes(sealed);
  }

  private static String pretty(ObjectNode sealed) {
    return Json.mapper().writerWithDefaultPrettyPrinter().writeValueAsString(sealed);
  }

  /** The same with the members of every object the other way round. */
  private static JsonNode reversedNode(JsonNode node) {
    if (node instanceof ObjectNode object) {
      return reversed(object);
    }
    if (node.isArray()) {
      var array = Json.mapper().createArrayNode();
      node.forEach(child -> array.add(reversedNode(child)));
      return array;
    }
    return node;
  }

  private static ObjectNode reversed(ObjectNode object) {
    List<Map.Entry<String, JsonNode>> members = new ArrayList<>(object.properties());
    ObjectNode reversed = Json.object();
    for (int i = members.size() - 1; i >= 0; i--) {
      reversed.set(members.get(i).getKey(), reversedNode(members.get(i).getValue()));
    }
    return reversed;
  }

  /** Flips every bit in turn; which are accepted, as "this to that at byte". */
  private List<String> flipsAccepted(byte[] document) throws IOException {
    assertThat(answer(document)).contains(SealAnswer.TRUSTED_KEY);
    List<String> accepted = new ArrayList<>();
    for (int bit = 0; bit < document.length * 8; bit++) {
      byte[] flipped = document.clone();
      flipped[bit / 8] ^= (byte) (1 << (bit % 8));
      if (isAccepted(flipped)) {
        accepted.add(
            shown(document[bit / 8]) + " to " + shown(flipped[bit / 8]) + " at " + bit / 8);
      }
    }
    return accepted;
  }

  private static String shown(byte character) {
    return switch (character) {
      case '\r' -> "\\r";
      case '\t' -> "\\t";
      default -> String.valueOf((char) character);
    };
  }

  /** Leaves every line out in turn, one member a line; gives those that nobody misses. */
  private List<String> linesNotMissed(ObjectNode sealed) throws IOException {
    List<String> lines = pretty(sealed).lines().toList();
    List<String> accepted = new ArrayList<>();
    for (int i = 0; i < lines.size(); i++) {
      List<String> rest = new ArrayList<>(lines);
      String lost = rest.remove(i);
      if (isAccepted(String.join("\n", rest).getBytes(StandardCharsets.UTF_8))) {
        accepted.add(lost);
      }
    }
    return accepted;
  }

  private boolean isAccepted(byte[] content) throws IOException {
    return answer(content)
        .filter(a -> a == SealAnswer.TRUSTED_KEY || a == SealAnswer.UNKNOWN_KEY)
        .isPresent();
  }

  private Optional<SealAnswer> answer(byte[] content) throws IOException {
    Files.write(file, content);
    return verification.file(file) instanceof Outcome.Answered answered
        ? Optional.of(answered.answer())
        : Optional.empty();
  }
}
