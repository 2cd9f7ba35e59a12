package org.thumbseal.seal;

import java.util.Optional;
import org.thumbseal.json.JsonRefusedException;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.node.ObjectNode;

/** Reads public keys in JWK form (RFC 7517, RFC 8037). */
final class Jwk {
  private Jwk() {}

  /**
   * The key of a JWK; members that do not concern the key are left alone.
   *
   * @throws KeyException if it is no Ed25519 key, not public, or its {@code kid} or {@code alg} say
   *     otherwise
   */
  static VerifyingKey read(ObjectNode jwk) throws KeyException {
    if (jwk.has("d")) {
      throw new KeyException("holds a private key; a trusted key is public and has no \"d\"");
    }
    require(jwk, "kty", "OKP");
    require(jwk, "crv", "Ed25519");
    byte[] x =
        Base64Url.decode(text(jwk, "x").orElse(""), VerifyingKey.LENGTH)
            .orElseThrow(() -> new KeyException("\"x\" is not 32 bytes in base64url"));
    VerifyingKey key = VerifyingKey.of(x);
    requireIfThere(jwk, "alg", "EdDSA");
    requireIfThere(jwk, "kid", key.kid());
    return key;
  }

  /**
   * Why a file was refused, without what the parser quotes from it: by mistake it may be a private
   * key.
   */
  static String withoutContent(JsonRefusedException e) {
    String message = String.valueOf(e.getMessage());
    return message.replaceFirst("^(is not JSON(: line \\d+, column \\d+)?).*", "$1");
  }

  static Optional<String> text(JsonNode object, String name) {
    return Optional.ofNullable(object.get(name))
        .filter(JsonNode::isString)
        .map(JsonNode::stringValue);
  }

  private static void requireIfThere(ObjectNode jwk, String name, String value)
      throws KeyException {
    if (jwk.has(name)) {
      require(jwk, name, value);
    }
  }

  private static void require(ObjectNode jwk, String name, String value) throws KeyException {
    if (!text(jwk, name).equals(Optional.of(value))) {
      throw new KeyException("is not an Ed25519 JWK: \"" + name + "\" is not \"" + value + "\"");
    }
  }
}
