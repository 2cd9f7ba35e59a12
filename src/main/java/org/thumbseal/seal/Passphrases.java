package org.thumbseal.seal;

import java.nio.file.Path;
import java.util.Optional;

/** Where the passphrases of private keys come from. */
public interface Passphrases {
  /** There are none. */
  Passphrases NONE =
      new Passphrases() {
        @Override
        public Passphrase of(Path keyFile) throws KeyException {
          throw new KeyException(keyFile + ": is encrypted, and its passphrase is not known");
        }

        @Override
        public Optional<Passphrase> forNewKey() {
          return Optional.empty();
        }
      };

  /**
   * The passphrase of an encrypted key.
   *
   * @param keyFile holds the key, to be named where somebody is asked
   * @throws KeyException if there is none; the message says what to do
   */
  Passphrase of(Path keyFile) throws KeyException;

  /**
   * The passphrase to encrypt a key with that is made, where it is to be encrypted.
   *
   * @throws KeyException if it cannot be had, or is none to encrypt with
   */
  Optional<Passphrase> forNewKey() throws KeyException;
}
