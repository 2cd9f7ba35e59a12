package org.thumbseal.seal;

import java.nio.file.Path;
import java.util.List;

/**
 * A private key and where it lives.
 *
 * @param key the key
 * @param file the file that holds it
 * @param created whether it was made just now
 * @param notes what was put in order on the way, a line each; empty as a rule
 */
public record OpenedKey(SigningKey key, Path file, boolean created, List<String> notes) {
  /** Keeps a copy of the notes. */
  public OpenedKey {
    notes = List.copyOf(notes);
  }

  /** One line for the user on what key this is. */
  public String note() {
    String what = created ? "made a signing key in " : "signing key ";
    return what + file + ", fingerprint " + key.verifyingKey().fingerprint();
  }
}
