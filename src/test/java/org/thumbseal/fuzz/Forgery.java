package org.thumbseal.fuzz;

import java.util.Base64;
import java.util.List;
import org.thumbseal.json.Canonical;
import org.thumbseal.seal.LedgerPosition;
import org.thumbseal.seal.Seal;
import org.thumbseal.seal.SigningKey;
import org.thumbseal.seal.VerifyingKey;
import tools.jackson.databind.node.ObjectNode;

/** What a stranger may do to a signature to have it taken for that of the trusted key. */
enum Forgery {
  /** Sealed in his own name: good, and by an unknown key. */
  OWN_NAME {
    @Override
    String apply(ObjectNode document, Hands hands) {
      sealAnew(document, hands);
      return Canonical.text(document);
    }
  },
  /** His seal, the trusted key in the document. */
  KEY_SWAPPED {
    @Override
    String apply(ObjectNode document, Hands hands) {
      sealAnew(document, hands);
      document.withObjectProperty(Seal.LEDGER).set("key", hands.trusted().members());
      return "";
    }
  },
  /** His seal, the trusted key's name in the header. */
  HEADER_SWAPPED {
    @Override
    String apply(ObjectNode document, Hands hands) {
      sealAnew(document, hands);
      header(document, "{\"alg\":\"EdDSA\",\"kid\":\"" + hands.trusted().kid() + "\"}");
      return "";
    }
  },
  /** A header that tells the reader how to read it. */
  HEADER_OBEYED {
    @Override
    String apply(ObjectNode document, Hands hands) {
      sealAnew(document, hands);
      String kid = "\"kid\":\"" + hands.trusted().kid() + "\"";
      String key = hands.stranger().verifyingKey().members().toString();
      header(
          document,
          hands
              .dice()
              .of(
                  List.of(
                      "{\"alg\":\"none\"}",
                      "{\"alg\":\"none\"," + kid + "}",
                      "{\"alg\":\"HS256\"," + kid + "}",
                      "{\"alg\":\"EdDSA\",\"jwk\":" + key + "," + kid + "}",
                      "{\"alg\":\"EdDSA\",\"jku\":\"http://127.0.0.1:9/\"," + kid + "}",
                      "{\"alg\":\"EdDSA\",\"b64\":false,\"crit\":[\"b64\"]," + kid + "}",
                      "{\"alg\":\"EdDSA\",\"crit\":[\"x\"]," + kid + ",\"x\":1}")));
      return "";
    }
  },
  /** Bytes of the signature chosen: all zero, all ones, random, S moved up by the group order. */
  SIGNATURE_CHOSEN {
    @Override
    String apply(ObjectNode document, Hands hands) {
      String old = document.path(Seal.SIGNATURE).asString("..");
      byte[] bytes = hands.dice().bytes(64);
      java.util.Arrays.fill(bytes, 0, hands.dice().below(64), (byte) -hands.dice().below(2));
      String head = old.substring(0, Math.max(0, old.indexOf("..")));
      document.put(
          Seal.SIGNATURE,
          head + ".." + Base64.getUrlEncoder().withoutPadding().encodeToString(bytes));
      return "";
    }
  };

  /** Whose hands: the stranger's key, the key that is trusted, and chance. */
  record Hands(SigningKey stranger, VerifyingKey trusted, Dice dice) {}

  /** Forges; gives the canonical form if it is an honest seal in the stranger's own name. */
  abstract String apply(ObjectNode document, Hands hands);

  private static void sealAnew(ObjectNode document, Hands hands) {
    ObjectNode sealed = Seal.seal(document, LedgerPosition.FIRST, hands.stranger());
    document.setAll(sealed);
  }

  private static void header(ObjectNode document, String json) {
    String old = document.path(Seal.SIGNATURE).asString("..");
    document.put(
        Seal.SIGNATURE,
        Base64.getUrlEncoder().withoutPadding().encodeToString(Bytes.of(json))
            + old.substring(old.indexOf("..")));
  }
}
