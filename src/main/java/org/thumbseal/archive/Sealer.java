package org.thumbseal.archive;

import org.thumbseal.seal.SealAnswer;
import org.thumbseal.seal.SealVerifier;
import org.thumbseal.seal.SigningKey;
import org.thumbseal.seal.TrustStore;
import tools.jackson.databind.node.ObjectNode;

/**
 * Who seals in a result directory, and whose work there is built on. A head by anybody else is not
 * followed: it may have been put there to make a cut-off chain look whole.
 *
 * @param key seals
 * @param trust the keys besides it whose heads are taken over
 */
public record Sealer(SigningKey key, TrustStore trust) {
  /** Builds on nobody's work but its own. */
  static Sealer alone(SigningKey key) {
    return new Sealer(key, TrustStore.of());
  }

  /** The same key, building on the work of others. */
  public Sealer trusting(TrustStore others) {
    return new Sealer(key, others);
  }

  boolean trusts(ObjectNode document) {
    return isTrusted(document, TrustStore.of(key.verifyingKey())) || isTrusted(document, trust);
  }

  private static boolean isTrusted(ObjectNode document, TrustStore trust) {
    return new SealVerifier(trust).check(document).answer() == SealAnswer.TRUSTED_KEY;
  }
}
