package org.thumbseal.seal;

import java.nio.charset.StandardCharsets;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.thumbseal.json.Canonical;
import org.thumbseal.json.Json;
import org.thumbseal.json.JsonGate;
import org.thumbseal.json.JsonRefusedException;
import tools.jackson.databind.node.ObjectNode;

/**
 * A JWS with detached content (RFC 7515 appendix F) of one single kind: Ed25519 (RFC 8037), and a
 * protected header of exactly {@code alg} and {@code kid}. Nothing in a header is ever obeyed: what
 * differs from the one form is refused, be it another algorithm, {@code crit}, {@code b64} or a key
 * brought along.
 */
final class DetachedJws {
  private static final Pattern FORM = Pattern.compile("([A-Za-z0-9_-]+)\\.\\.([A-Za-z0-9_-]+)");

  private final String header;
  private final String kid;
  private final byte[] signature;

  private DetachedJws(String header, String kid, byte[] signature) {
    this.header = header;
    this.kid = kid;
    this.signature = signature;
  }

  static String sign(byte[] payload, SigningKey key) {
    String header = header(key.verifyingKey().kid());
    return header + ".." + Base64Url.encode(key.sign(input(header, payload)));
  }

  /** Takes the text apart. */
  static DetachedJws parse(String text) throws BrokenSealException {
    Matcher parts = FORM.matcher(text);
    if (!parts.matches()) {
      throw new BrokenSealException("signature is not a JWS with detached content");
    }
    byte[] signature =
        Base64Url.decode(parts.group(2), VerifyingKey.SIGNATURE_LENGTH)
            .orElseThrow(() -> new BrokenSealException("signature is not 64 bytes in base64url"));
    return new DetachedJws(parts.group(1), kid(parts.group(1)), signature);
  }

  String kid() {
    return kid;
  }

  boolean verifies(byte[] payload, VerifyingKey key) {
    return key.verifies(input(header, payload), signature);
  }

  private static String kid(String header) throws BrokenSealException {
    ObjectNode members = members(header);
    String alg = Jwk.text(members, "alg").orElse("absent");
    if (!alg.equals("EdDSA")) {
      throw new BrokenSealException("signature algorithm is " + alg + ", only EdDSA is taken");
    }
    String kid = Jwk.text(members, "kid").orElse("");
    if (!header.equals(header(kid))) {
      throw new BrokenSealException("signature header is not exactly alg and kid");
    }
    return kid;
  }

  private static ObjectNode members(String header) throws BrokenSealException {
    Optional<byte[]> bytes = Base64Url.decode(header);
    try {
      return JsonGate.read(bytes.orElse(new byte[0]));
    } catch (JsonRefusedException e) {
      throw new BrokenSealException("signature header " + e.getMessage());
    }
  }

  private static String header(String kid) {
    return Base64Url.encode(Canonical.bytes(Json.object().put("alg", "EdDSA").put("kid", kid)));
  }

  private static byte[] input(String header, byte[] payload) {
    return (header + "." + Base64Url.encode(payload)).getBytes(StandardCharsets.US_ASCII);
  }
}
