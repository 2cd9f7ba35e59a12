package org.thumbseal.seal;

import java.nio.file.Path;

/**
 * A private key and where it lives.
 *
 * @param key the key
 * @param file the file that holds it
 * @param created whether it was made just now
 */
public record OpenedKey(SigningKey key, Path file, boolean created) {
  /** One line for the user on what key this is. */
  public String note() {
    String what = created ? "made a signing key in " : "signing key ";
    return what + file + ", fingerprint " + key.verifyingKey().fingerprint();
  }
}
