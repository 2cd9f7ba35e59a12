package org.thumbseal.seal;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.nio.charset.StandardCharsets;
import org.jose4j.jwk.JsonWebKey;
import org.jose4j.jws.AlgorithmIdentifiers;
import org.jose4j.jws.JsonWebSignature;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.thumbseal.json.Canonical;
import org.thumbseal.json.ExampleDocument;
import org.thumbseal.json.Json;
import org.thumbseal.json.JsonGate;
import tools.jackson.databind.node.ObjectNode;

/** Keys and signatures against RFC 8037, RFC 7638 and a JOSE library of other hands. */
class JoseVectorsTest {
  /** RFC 8037 appendix A.2, the public key; A.1 has its private half, seed of RFC 8032 test 1. */
  private static final String JWK =
      "{\"kty\":\"OKP\",\"crv\":\"Ed25519\",\"x\":\"11qYAYKxCrfVS_7TyWQHOg7hcvPapiMlrwIaaPcHURo\"}";

  /** RFC 8037 appendix A.4. */
  private static final String HEADER = "eyJhbGciOiJFZERTQSJ9";

  private static final String PAYLOAD = "Example of Ed25519 signing";
  private static final String SIGNATURE =
      "hgyY0il_MGCjP0JzlnLWG1PPOt7-09PGcvMg3AIbQR6dWbhijcNR4ki4iylGjg5BhVsPt9g7sVvpAr_MuM0KAg";

  /** RFC 8037 appendix A.3, computed as RFC 7638 section 3 says. */
  @Test
  void thumbprint() throws Exception {
    assertThat(key().kid()).isEqualTo("kPrK_qmxVWaYVA9wwBF6Iuo3vVzz7TxHCTwXBygrS4k");
  }

  /** RFC 8037 appendices A.4 and A.5. */
  @Test
  void signingInputAndSignature() throws Exception {
    String input = HEADER + "." + Base64Url.encode(PAYLOAD.getBytes(StandardCharsets.US_ASCII));
    assertThat(input).isEqualTo("eyJhbGciOiJFZERTQSJ9.RXhhbXBsZSBvZiBFZDI1NTE5IHNpZ25pbmc");

    byte[] signature = Base64Url.decode(SIGNATURE).orElseThrow();
    assertThat(key().verifies(input.getBytes(StandardCharsets.US_ASCII), signature)).isTrue();
    assertThat(key().verifies((input + "x").getBytes(StandardCharsets.US_ASCII), signature))
        .isFalse();
  }

  /** The RFC's own JWS has no {@code kid}; ours must have one, so it is refused by form. */
  @Test
  void aHeaderWithoutKidIsNotOurs() {
    assertThatThrownBy(() -> DetachedJws.parse(HEADER + ".." + SIGNATURE))
        .hasMessage("signature header is not exactly alg and kid");
  }

  /**
   * RFC 7515 section 2 and appendix C: base64url has no padding; the rest is RFC 4648 section 3.5.
   */
  @ParameterizedTest
  @CsvSource({"AA, true", "AB, false", "AA==, false", "A, false", "A+, false", "'A A', false"})
  void oneSpellingForEachValue(String text, boolean accepted) {
    assertThat(Base64Url.decode(text).isPresent()).isEqualTo(accepted);
  }

  @Test
  void anotherLibraryVerifiesASealedDocument() throws Exception {
    SigningKey key = SigningKey.generate();
    ObjectNode sealed = Seal.seal(ExampleDocument.unsealed(), LedgerPosition.FIRST, key);
    JsonWebSignature jws = independent(sealed, key);

    assertThat(jws.verifySignature()).isTrue();
    assertThat(jws.getKeyIdHeaderValue())
        .isEqualTo(
            JsonWebKey.Factory.newJwk(Canonical.text(key.verifyingKey().jwk()))
                .calculateBase64urlEncodedThumbprint("SHA-256"));
  }

  @Test
  void anotherLibraryRefusesATamperedOne() throws Exception {
    SigningKey key = SigningKey.generate();
    ObjectNode sealed = Seal.seal(ExampleDocument.unsealed(), LedgerPosition.FIRST, key);
    sealed.put("verdict", "fail");

    assertThat(independent(sealed, key).verifySignature()).isFalse();
  }

  /** Only the canonical form is ours here; signature, key and header are read by jose4j. */
  private static JsonWebSignature independent(ObjectNode sealed, SigningKey key) throws Exception {
    ObjectNode content = sealed.deepCopy();
    content.remove("signature");
    JsonWebSignature jws = new JsonWebSignature();
    jws.setAlgorithmConstraints(
        new org.jose4j.jwa.AlgorithmConstraints(
            org.jose4j.jwa.AlgorithmConstraints.ConstraintType.PERMIT, AlgorithmIdentifiers.EDDSA));
    jws.setCompactSerialization(sealed.get("signature").stringValue());
    jws.setEncodedPayload(Base64Url.encode(Canonical.bytes(content)));
    jws.setKey(JsonWebKey.Factory.newJwk(Canonical.text(key.verifyingKey().jwk())).getKey());
    return jws;
  }

  private static VerifyingKey key() throws Exception {
    return Jwk.read(JsonGate.read(JWK.getBytes(StandardCharsets.UTF_8)));
  }

  /** RFC 7517 section 4: {@code kid} and {@code alg} may be absent, but must not lie. */
  @ParameterizedTest
  @CsvSource({
    "d, nWGxne_9WmC6hEr0kuwsxERJxWl7MmkZcDusAxyuf2A, private",
    "kty, EC, kty",
    "crv, X25519, crv",
    "x, 11qYAYKxCrfVS_7TyWQHOg7hcvPapiMlrwIaaPcHUR, 32 bytes",
    "alg, HS256, alg",
    "kid, mine, kid"
  })
  void keysThatAreRefused(String member, String value, String reason) throws Exception {
    ObjectNode jwk = JsonGate.read(JWK.getBytes(StandardCharsets.UTF_8)).put(member, value);

    assertThatThrownBy(() -> Jwk.read(jwk))
        .isInstanceOf(KeyException.class)
        .hasMessageContaining(reason)
        .hasMessageNotContaining("nWGxne");
  }

  @Test
  void thePublicJwkReadsBack() throws Exception {
    VerifyingKey key = SigningKey.generate().verifyingKey();

    assertThat(Jwk.read(key.jwk())).isEqualTo(key);
    assertThat(Json.object().setAll(key.members())).hasSize(3);
  }
}
