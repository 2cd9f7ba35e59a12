package org.thumbseal.archive;

import static org.assertj.core.api.Assertions.assertThat;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Map;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.EnumSource;
import org.junit.jupiter.params.provider.MethodSource;
import org.thumbseal.archive.OtherHand.Run;
import org.thumbseal.json.Canonical;
import org.thumbseal.json.Json;
import org.thumbseal.json.JsonGate;
import org.thumbseal.seal.LedgerPosition;
import org.thumbseal.seal.Seal;
import org.thumbseal.seal.SealAnswer;
import org.thumbseal.seal.SigningKey;
import org.thumbseal.seal.TrustStore;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.node.ObjectNode;

/** openssl, Python and JavaScript against one fixture, and against what was made of it. */
class OtherHandsTest {
  private static final Path SEALED = Path.of("fixtures/sealed");

  @TempDir private Path folder;

  private static List<Path> documents(String within) {
    try (Stream<Path> all = Files.walk(SEALED.resolve(within))) {
      return all.filter(path -> path.toString().endsWith(".json")).sorted().toList();
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  private static Stream<Arguments> eachFor(List<Path> documents) {
    return Stream.of(OtherHand.values())
        .flatMap(hand -> documents.stream().map(document -> Arguments.of(hand, document)));
  }

  static Stream<Arguments> sound() {
    return eachFor(documents("results"));
  }

  static Stream<Arguments> tampered() {
    return eachFor(documents("tampered"));
  }

  private static Path sealed() {
    return documents("results/2026").get(0);
  }

  private static Run checked(OtherHand hand, Path document) throws Exception {
    assumeTrue(hand.isHere(), hand.absence());
    return hand.verify(document, hand.keyIn(SEALED));
  }

  @ParameterizedTest
  @MethodSource("sound")
  void aSoundOneIsGood(OtherHand hand, Path document) throws Exception {
    Run run = checked(hand, document);

    assertThat(run.output()).startsWith(document + ": good seal by the key ").hasLineCount(1);
    assertThat(run.code()).isZero();
    if (!document.endsWith("head.json")) {
      assertThat(run.output()).endsWith("; the capture is the one that was graded\n");
    }
  }

  @ParameterizedTest
  @MethodSource("tampered")
  void aTamperedOneIsRefused(OtherHand hand, Path document) throws Exception {
    Run run = checked(hand, document);

    assertThat(run.output()).startsWith(document + ": broken seal: ").hasLineCount(1);
    assertThat(run.code()).isEqualTo(1);
  }

  /** Ours must be neither laxer nor stricter than theirs. */
  @Test
  void weAgreeWithThem() throws Exception {
    Verification ours = new Verification(TrustStore.load(List.of(SEALED.resolve("key.jwk"))));

    assertThat(documents("results").stream().map(ours::file))
        .hasSize(3)
        .allMatch(OtherHandsTest::isGood);
    assertThat(documents("tampered").stream().map(ours::file))
        .hasSizeGreaterThan(9)
        .noneMatch(OtherHandsTest::isGood);
  }

  private static boolean isGood(Outcome outcome) {
    return outcome instanceof Outcome.Answered answered
        && answered.answer() == SealAnswer.TRUSTED_KEY;
  }

  @ParameterizedTest
  @EnumSource
  void withoutItsCaptureThatIsSaid(OtherHand hand) throws Exception {
    Path alone = Files.copy(sealed(), folder.resolve("alone.json"));

    Run run = checked(hand, alone);

    assertThat(run.output())
        .startsWith(alone + ": good seal")
        .endsWith("; its capture is not here\n");
    assertThat(run.code()).isZero();
  }

  /** RFC 8785 is there so that spaces, the order of members and spellings do not matter. */
  @ParameterizedTest
  @EnumSource(names = {"PYTHON", "NODE"})
  void oneThatWasFormattedAnewIsStillGood(OtherHand hand) throws Exception {
    ObjectNode backwards = Json.object();
    List<Map.Entry<String, JsonNode>> members =
        new ArrayList<>(JsonGate.read(Files.readAllBytes(sealed())).properties());
    Collections.reverse(members);
    members.forEach(member -> backwards.set(member.getKey(), member.getValue()));
    String pretty =
        Json.mapper()
            .writerWithDefaultPrettyPrinter()
            .writeValueAsString(backwards)
            .replace("ü", "\\u00fc")
            .replace("\"sequence\" : 2", "\"sequence\" : 20e-1");
    assertThat(pretty).contains("\\u00fc", "20e-1").matches("(?s)\\{\\s+\"verdict\".*");

    Run run = checked(hand, Files.writeString(folder.resolve("pretty.json"), pretty));

    assertThat(run.output()).contains(": good seal by the key ");
    assertThat(run.code()).isZero();
  }

  @ParameterizedTest
  @EnumSource
  void whatIsNotToBeReadIsNeitherGoodNorBroken(OtherHand hand) throws Exception {
    Path key = hand.keyIn(SEALED);
    assumeTrue(hand.isHere(), hand.absence());

    assertThat(hand.verify(sealed()).code()).isEqualTo(2);
    assertThat(hand.verify(sealed(), folder.resolve("none")).code()).isEqualTo(2);
    assertThat(hand.verify(folder.resolve("none"), key).code()).isEqualTo(2);
    assertThat(hand.verify(key, sealed()).code()).isEqualTo(2);
    for (String text : List.of("[]", "{\"a\":NaN}", "{\"a\":1e400}", "{} {}", "\uFEFF{}", "")) {
      Path odd = Files.writeString(folder.resolve("odd"), text);
      assertThat(hand.verify(odd, key)).extracting(Run::code).as(text).isIn(1, 2);
    }
  }

  /** A name that leads out of the folder is not followed, were it ever sealed. */
  @ParameterizedTest
  @EnumSource
  void aCaptureElsewhereIsNotLookedFor(OtherHand hand) throws Exception {
    SigningKey key = SigningKey.generate();
    Files.writeString(folder.resolve("key.pem"), key.verifyingKey().pem());
    Files.writeString(folder.resolve("key.jwk"), Canonical.text(key.verifyingKey().members()));
    Files.writeString(folder.resolve("outside.log"), "anything");
    Path within = Files.createDirectory(folder.resolve("within"));
    ObjectNode document = JsonGate.read(Files.readAllBytes(sealed()));
    ((ObjectNode) document.get("evidence")).put("capture", "../outside.log");
    String text = Canonical.text(Seal.seal(document, LedgerPosition.FIRST, key));
    Path file = Files.writeString(within.resolve("result.json"), text + "\n");
    assumeTrue(hand.isHere(), hand.absence());

    assertThat(hand.verify(file, hand.keyIn(folder)).output()).doesNotContain("that was graded");
  }

  /** The digest that RFC 8785 appendix B points to; see NumberVectorsTest. */
  @Test
  void pythonWritesNumbersAsTheStandardDoes() throws Exception {
    OtherHand python = OtherHand.PYTHON;
    assumeTrue(python.isHere(), python.absence());

    Run run =
        OtherHand.run(
            python.interpreter(),
            "src/test/resources/org/thumbseal/archive/es6-numbers.py",
            python.script(),
            "src/test/resources/org/thumbseal/json/es6-static-numbers.csv",
            "10000");

    assertThat(run.output().strip())
        .isEqualTo("b9f7a8e75ef22a835685a52ccba7f7d6bdc99e34b010992cbc5864cd12be6892");
  }

  /** As the page shows it. */
  @Test
  void theSecondNamesTheFirst() throws Exception {
    List<Path> inOrder =
        List.of(documents("results/2026").get(1), documents("results/2026").get(0));
    ObjectNode first = JsonGate.read(Files.readAllBytes(inOrder.get(0)));
    ObjectNode second = JsonGate.read(Files.readAllBytes(inOrder.get(1)));
    assertThat(first.get("ledger").get("sequence").intValue()).isEqualTo(1);

    assertThat(
            OtherHand.run("sh", "-c", "tr -d '\\n' <" + inOrder.get(0) + " | sha256sum").output())
        .startsWith(second.get("ledger").get("previous").stringValue() + " ");
    assertThat(Files.readString(Path.of("src/docs/result-format.md")))
        .contains(inOrder.stream().map(path -> path.getFileName().toString()).toList());
  }

  /** No host of anybody's registry, and exact versions. */
  @Test
  void thePackagesOfNodeArePinnedWithoutAHost() throws Exception {
    Path script = Path.of(OtherHand.NODE.script());
    JsonNode packages = JsonGate.read(Files.readAllBytes(script.resolveSibling("package.json")));

    assertThat(packages.get("dependencies"))
        .hasSize(2)
        .allSatisfy(version -> assertThat(version.stringValue()).matches("\\d+\\.\\d+\\.\\d+"));
    assertThat(Files.readString(script.resolveSibling("package-lock.json")))
        .contains("\"integrity\"")
        .doesNotContain("\"resolved\"");
  }
}
