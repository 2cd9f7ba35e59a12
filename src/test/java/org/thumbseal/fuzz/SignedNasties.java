package org.thumbseal.fuzz;

import java.math.BigInteger;
import java.nio.file.Files;
import java.nio.file.Path;
import java.security.GeneralSecurityException;
import java.security.KeyFactory;
import java.security.PrivateKey;
import java.security.Signature;
import java.security.spec.PKCS8EncodedKeySpec;
import java.util.Arrays;
import java.util.Base64;
import java.util.LinkedHashMap;
import java.util.Map;
import javax.crypto.Mac;
import javax.crypto.spec.SecretKeySpec;
import org.thumbseal.json.Canonical;
import org.thumbseal.json.ExampleDocument;
import org.thumbseal.json.Json;
import org.thumbseal.seal.LedgerPosition;
import org.thumbseal.seal.Seal;
import org.thumbseal.seal.SigningKey;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.node.ObjectNode;

/**
 * Documents that are signed, and yet not what they should be; by name. The keys are no secret: 32
 * bytes of 01 (trusted) and of 02 (the stranger). Its main method writes them to a folder.
 */
public final class SignedNasties {
  /** Order of the group of Ed25519 (RFC 8032 section 5.1). */
  private static final BigInteger ORDER =
      BigInteger.TWO.pow(252).add(new BigInteger("27742317777372353535851937790883648493"));

  private static final String STRANGERS_SERVER = "http://127.0.0.1:9/keys";

  private final SigningKey trusted = Keys.of(1);
  private final SigningKey stranger = Keys.of(2);
  private final ObjectNode good =
      Seal.seal(ExampleDocument.unsealed(1), LedgerPosition.FIRST, trusted);
  private final Map<String, ObjectNode> all = new LinkedHashMap<>();

  private SignedNasties() {}

  /** All of them; keys that are fetched from a network are named at this address. */
  public static Map<String, ObjectNode> all(String address) throws GeneralSecurityException {
    SignedNasties nasties = new SignedNasties();
    nasties.headers(address);
    nasties.signatures();
    nasties.ledgers();
    return nasties.all;
  }

  /** The public key that is trusted, as a file. */
  public static String trustedKey() {
    return Canonical.text(Keys.of(1).verifyingKey().jwk());
  }

  /** Writes all to a folder, as they stand in fixtures/hostile. */
  public static void main(String[] args) throws Exception {
    Path folder = Path.of(args[0]);
    for (Map.Entry<String, ObjectNode> each : all(STRANGERS_SERVER).entrySet()) {
      Files.writeString(
          folder.resolve("signed-" + each.getKey() + ".json"), Canonical.text(each.getValue()));
    }
    Files.writeString(folder.resolve("trusted.jwk"), trustedKey());
  }

  private void headers(String address) throws GeneralSecurityException {
    String kid = "\"kid\":\"" + trusted.verifyingKey().kid() + "\"";
    String jwk = Canonical.text(stranger.verifyingKey().members());
    String url = "\"" + address + "\"";
    all.put("good", good);
    header("alg-none", "{\"alg\":\"none\"," + kid + "}");
    header("alg-es256", "{\"alg\":\"ES256\"," + kid + "}");
    header("alg-eddsa-upper", "{\"alg\":\"EDDSA\"," + kid + "}");
    header("crit-unknown", "{\"alg\":\"EdDSA\",\"crit\":[\"x\"]," + kid + ",\"x\":1}");
    header("b64-false", "{\"alg\":\"EdDSA\",\"b64\":false,\"crit\":[\"b64\"]," + kid + "}");
    header("jwk-of-stranger", "{\"alg\":\"EdDSA\",\"jwk\":" + jwk + "," + kid + "}");
    header("jku", "{\"alg\":\"EdDSA\",\"jku\":" + url + "," + kid + "}");
    header("x5u", "{\"alg\":\"EdDSA\"," + kid + ",\"x5u\":" + url + "}");
    header("kid-of-trusted", "{\"alg\":\"EdDSA\"," + kid + "}");
    header("kid-path", "{\"alg\":\"EdDSA\",\"kid\":\"../../trusted.jwk\"}");
    all.put("hs256", hs256("{\"alg\":\"HS256\"," + kid + "}"));
    all.put("stranger", Seal.seal(good, LedgerPosition.FIRST, stranger));
  }

  /** Signed by the stranger with this header. */
  private void header(String name, String json) throws GeneralSecurityException {
    ObjectNode document = good.deepCopy();
    document.remove(Seal.SIGNATURE);
    all.put(name, signed(document, json, 2));
  }

  /** The public key as the secret of a MAC: what a library takes that lets the header choose. */
  private ObjectNode hs256(String header) throws GeneralSecurityException {
    ObjectNode document = good.deepCopy();
    document.remove(Seal.SIGNATURE);
    Mac mac = Mac.getInstance("HmacSHA256");
    String x = trusted.verifyingKey().members().get("x").stringValue();
    mac.init(new SecretKeySpec(Base64.getUrlDecoder().decode(x), "HmacSHA256"));
    return document.put(
        Seal.SIGNATURE, url(Bytes.of(header)) + ".." + url(mac.doFinal(input(header, document))));
  }

  private void signatures() {
    String text = good.get(Seal.SIGNATURE).stringValue();
    String head = text.substring(0, text.indexOf("..") + 2);
    byte[] bytes = Base64.getUrlDecoder().decode(text.substring(head.length()));
    signature("padded", text + "==");
    signature("stray-bits", text.substring(0, text.length() - 1) + next(text));
    signature("zero", head + url(new byte[64]));
    signature("s-plus-order", head + url(moved(bytes)));
    signature("identity-r", head + url(Bytes.join(new byte[] {1}, new byte[63])));
    signature("attached", head.replace("..", ".e30.") + url(bytes));
    ObjectNode json = Json.object().put("payload", "");
    json.putArray("signatures").addObject().put("signature", text);
    json.withArrayProperty("signatures").addObject().put("signature", text);
    all.put("json-serialization", with(Seal.SIGNATURE, json));
    all.put("two-signatures", with(Seal.SIGNATURE, Json.object().arrayNode().add(text).add(text)));
  }

  private void signature(String name, String text) {
    all.put(name, good.deepCopy().put(Seal.SIGNATURE, text));
  }

  private ObjectNode with(String name, JsonNode value) {
    ObjectNode copy = good.deepCopy();
    copy.set(name, value);
    return copy;
  }

  /** Truly signed with the trusted key, with a place that none can have. */
  private void ledgers() throws GeneralSecurityException {
    ledger("sequence-minus-one", "-1");
    ledger("sequence-zero", "0");
    ledger("sequence-fraction", "1.5");
    ledger("sequence-text", "\"1\"");
    ledger("sequence-list", "[1]");
    ledger("sequence-2-53-minus-1", "9007199254740991");
  }

  private void ledger(String name, String sequence) throws GeneralSecurityException {
    ObjectNode document = good.deepCopy();
    document.remove(Seal.SIGNATURE);
    ((ObjectNode) document.get(Seal.LEDGER)).set("sequence", Json.mapper().readTree(sequence));
    String kid = trusted.verifyingKey().kid();
    all.put(name, signed(document, "{\"alg\":\"EdDSA\",\"kid\":\"" + kid + "\"}", 1));
  }

  private static ObjectNode signed(ObjectNode document, String header, int key)
      throws GeneralSecurityException {
    Signature engine = Signature.getInstance("Ed25519");
    engine.initSign(secret(key));
    engine.update(input(header, document));
    return document.put(Seal.SIGNATURE, url(Bytes.of(header)) + ".." + url(engine.sign()));
  }

  private static PrivateKey secret(int number) throws GeneralSecurityException {
    String base64 = Keys.pem(number).replaceAll("-----[A-Z ]+-----|\\s", "");
    return KeyFactory.getInstance("Ed25519")
        .generatePrivate(new PKCS8EncodedKeySpec(Base64.getDecoder().decode(base64)));
  }

  private static byte[] input(String header, ObjectNode document) {
    return Bytes.of(url(Bytes.of(header)) + "." + url(Canonical.bytes(document)));
  }

  /** S + L in place of S: the same equation holds, and RFC 8032 section 5.1.7 forbids it. */
  private static byte[] moved(byte[] signature) {
    byte[] s = reversed(Arrays.copyOfRange(signature, 32, 64));
    byte[] sum = new BigInteger(1, s).add(ORDER).toByteArray();
    byte[] padded = Bytes.join(new byte[Math.max(0, 32 - sum.length)], sum);
    return Bytes.join(Arrays.copyOf(signature, 32), reversed(padded));
  }

  private static byte[] reversed(byte[] bytes) {
    byte[] out = new byte[bytes.length];
    for (int i = 0; i < out.length; i++) {
      out[i] = bytes[bytes.length - 1 - i];
    }
    return out;
  }

  /** The next character: in the last place of 64 bytes it differs in bits that are not used. */
  private static char next(String text) {
    return (char) (text.charAt(text.length() - 1) + 1);
  }

  private static String url(byte[] bytes) {
    return Base64.getUrlEncoder().withoutPadding().encodeToString(bytes);
  }
}
