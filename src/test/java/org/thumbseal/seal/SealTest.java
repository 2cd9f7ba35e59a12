package org.thumbseal.seal;

import static org.assertj.core.api.Assertions.assertThat;
import static org.junit.jupiter.params.provider.Arguments.arguments;

import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.MethodSource;
import org.thumbseal.json.Canonical;
import org.thumbseal.json.ExampleDocument;
import org.thumbseal.json.Json;
import org.thumbseal.json.JsonGate;
import org.thumbseal.json.JsonRefusedException;
import tools.jackson.databind.node.ObjectNode;

class SealTest {
  private static final SigningKey KEY = SigningKey.generate();
  private static final SigningKey STRANGER = SigningKey.generate();
  private static final SealVerifier VERIFIER = new SealVerifier(TrustStore.of(KEY.verifyingKey()));

  @Test
  void aSealByATrustedKey() {
    SealCheck check = VERIFIER.check(sealed());

    assertThat(check.answer()).isEqualTo(SealAnswer.TRUSTED_KEY);
    assertThat(check.signer()).isEqualTo(KEY.verifyingKey().fingerprint());
  }

  @Test
  void aSealByAStrangerIsGoodButUnknown() {
    SealCheck check = VERIFIER.check(seal(STRANGER));

    assertThat(check.answer()).isEqualTo(SealAnswer.UNKNOWN_KEY);
    assertThat(check.signer()).isEqualTo(STRANGER.verifyingKey().fingerprint());
  }

  @Test
  void aChangedDocumentOfAStrangerIsBroken() {
    assertThat(VERIFIER.check(seal(STRANGER).put("verdict", "fail")).answer())
        .isEqualTo(SealAnswer.BROKEN_SEAL);
  }

  @Test
  void withoutItsKeyAStrangersSealCannotBeChecked() {
    ObjectNode document = seal(STRANGER);
    ((ObjectNode) document.get("ledger")).remove("key");
    Seal.sign(document, STRANGER);

    SealCheck check = VERIFIER.check(document);
    assertThat(check.answer()).isEqualTo(SealAnswer.BROKEN_SEAL);
    assertThat(check.reason()).contains("cannot be checked");
  }

  @Test
  void aTrustedKeyNeedsNotBeInTheDocument() {
    ObjectNode document = sealed();
    ((ObjectNode) document.get("ledger")).remove("key");
    Seal.sign(document, KEY);

    assertThat(VERIFIER.check(document).answer()).isEqualTo(SealAnswer.TRUSTED_KEY);
  }

  static Stream<Arguments> forgedSignatures() {
    String good = sealed().get("signature").stringValue();
    String header = good.substring(0, good.indexOf('.'));
    String tail = good.substring(good.indexOf(".."));
    String kid = KEY.verifyingKey().kid();
    String x = KEY.verifyingKey().members().get("x").stringValue();
    return Stream.of(
        arguments("none", header("{\"alg\":\"none\"}") + "..", "not a JWS"),
        arguments("none, with signature", header("{\"alg\":\"none\"}") + tail, "algorithm is none"),
        arguments("HS256", header("{\"alg\":\"HS256\",\"kid\":\"" + kid + "\"}") + tail, "HS256"),
        arguments(
            "Ed25519", header("{\"alg\":\"Ed25519\",\"kid\":\"" + kid + "\"}") + tail, "only"),
        arguments("alg twice", header("{\"alg\":\"none\",\"alg\":\"EdDSA\"}") + tail, "Duplicate"),
        arguments(
            "crit",
            header("{\"alg\":\"EdDSA\",\"crit\":[\"exp\"],\"kid\":\"" + kid + "\"}") + tail,
            "not exactly"),
        arguments(
            "b64",
            header("{\"alg\":\"EdDSA\",\"b64\":false,\"crit\":[\"b64\"],\"kid\":\"" + kid + "\"}")
                + tail,
            "not exactly"),
        arguments(
            "jwk of a stranger",
            header("{\"alg\":\"EdDSA\",\"jwk\":{\"x\":\"" + x + "\"},\"kid\":\"" + kid + "\"}")
                + tail,
            "not exactly"),
        arguments(
            "order of the header",
            header("{\"kid\":\"" + kid + "\",\"alg\":\"EdDSA\"}") + tail,
            "not exactly"),
        arguments(
            "white space in the header",
            header("{\"alg\": \"EdDSA\",\"kid\":\"" + kid + "\"}") + tail,
            "not exactly"),
        arguments("no kid", header("{\"alg\":\"EdDSA\"}") + tail, "not exactly"),
        arguments(
            "kid of a stranger",
            header("{\"alg\":\"EdDSA\",\"kid\":\"" + STRANGER.verifyingKey().kid() + "\"}") + tail,
            "not the one that signed"),
        arguments(
            "attached", header + ".e30." + good.substring(good.indexOf("..") + 2), "not a JWS"),
        arguments("two signatures", good + tail, "not a JWS"),
        arguments("padded", good + "==", "not a JWS"),
        arguments("stray bits", good.substring(0, good.length() - 1) + "B", "not 64 bytes"),
        arguments("cut", good.substring(0, good.length() - 2), "not 64 bytes"),
        arguments("empty", "", "not a JWS"));
  }

  private static String header(String json) {
    return Base64Url.encode(json.getBytes(StandardCharsets.UTF_8));
  }

  @ParameterizedTest(name = "{0}")
  @MethodSource
  void forgedSignatures(String what, String signature, String reason) {
    SealCheck check = VERIFIER.check(sealed().put("signature", signature));

    assertThat(check.answer()).as(what).isEqualTo(SealAnswer.BROKEN_SEAL);
    assertThat(check.reason()).contains(reason);
  }

  @Test
  void signaturesOfOtherTypesAreBroken() {
    ObjectNode document = sealed();
    document.remove("signature");
    assertThat(VERIFIER.check(document).reason()).isEqualTo("there is no signature");
    document.putArray("signature").add("a").add("b");
    assertThat(VERIFIER.check(document).answer()).isEqualTo(SealAnswer.BROKEN_SEAL);
    document.putNull("signature");
    assertThat(VERIFIER.check(document).answer()).isEqualTo(SealAnswer.BROKEN_SEAL);
  }

  /** RFC 8785 is there for this: white space and the order of names are not content. */
  @Test
  void aReformattedDocumentStillVerifies() throws Exception {
    String pretty = Json.mapper().writerWithDefaultPrettyPrinter().writeValueAsString(sealed());
    assertThat(pretty.lines().count()).isGreaterThan(100);

    assertThat(VERIFIER.check(JsonGate.read(pretty.getBytes(StandardCharsets.UTF_8))).answer())
        .isEqualTo(SealAnswer.TRUSTED_KEY);
  }

  /**
   * Every bit of a sealed document, one at a time. A change that is accepted has turned one
   * spelling of the same content into another, which in a canonical file no single bit can do.
   */
  @Test
  void noFlippedBitIsAccepted() {
    byte[] document = Canonical.bytes(sealed());
    assertThat(document).hasSizeGreaterThan(2500);
    List<Integer> accepted = new ArrayList<>();
    for (int bit = 0; bit < document.length * 8; bit++) {
      document[bit / 8] ^= (byte) (1 << (bit % 8));
      if (accepts(document)) {
        accepted.add(bit);
      }
      document[bit / 8] ^= (byte) (1 << (bit % 8));
    }

    assertThat(accepted).isEmpty();
    assertThat(accepts(document)).isTrue();
  }

  /** Every line of the readable form left out, one at a time. */
  @Test
  void noLostLineIsAccepted() {
    List<String> lines =
        Json.mapper()
            .writerWithDefaultPrettyPrinter()
            .writeValueAsString(sealed())
            .lines()
            .toList();
    List<String> accepted = new ArrayList<>();
    for (int i = 0; i < lines.size(); i++) {
      List<String> rest = new ArrayList<>(lines);
      String lost = rest.remove(i);
      if (accepts(String.join("\n", rest).getBytes(StandardCharsets.UTF_8))) {
        accepted.add(lost);
      }
    }

    assertThat(accepted).isEmpty();
  }

  private static boolean accepts(byte[] bytes) {
    try {
      return VERIFIER.check(JsonGate.read(bytes)).intact();
    } catch (JsonRefusedException e) {
      return false;
    }
  }

  @Test
  void headsAreSealedAndReadBack() {
    ChainEnd before = new ChainEnd(STRANGER.verifyingKey().kid(), 7, Sha256.hex(new byte[0]));
    ChainEnd end = ChainEnd.none(KEY.verifyingKey().kid()).then(Sha256.hex(new byte[1]));
    Head head = new Head(end, List.of(before), "2026/x.json");

    ObjectNode sealed = head.sealed(KEY);
    assertThat(VERIFIER.check(sealed).answer()).isEqualTo(SealAnswer.TRUSTED_KEY);
    assertThat(Head.read(sealed)).contains(head);
    assertThat(head.documents()).isEqualTo(8);
    assertThat(VERIFIER.check(sealed.put("sequence", 2)).answer())
        .isEqualTo(SealAnswer.BROKEN_SEAL);
    assertThat(Head.read(sealed())).isEmpty();
  }

  private static ObjectNode sealed() {
    return seal(KEY);
  }

  private static ObjectNode seal(SigningKey key) {
    return Seal.seal(ExampleDocument.unsealed(), LedgerPosition.FIRST, key);
  }
}
