package org.thumbseal.cli;

import java.nio.file.Path;
import java.util.Arrays;
import java.util.Optional;
import org.thumbseal.json.Printable;
import org.thumbseal.seal.KeyException;
import org.thumbseal.seal.Passphrase;
import org.thumbseal.seal.Passphrases;

/**
 * Passphrases from a file that was named, else from a person.
 *
 * @param file the file, if one was named; then a new key is encrypted, too
 * @param terminal the person, if there is one
 * @param encryptNew whether a new key is to be encrypted in any case
 */
record AskedPassphrases(Optional<Path> file, Optional<Terminal> terminal, boolean encryptNew)
    implements Passphrases {
  @Override
  public Passphrase of(Path keyFile) throws KeyException {
    if (file.isPresent()) {
      return Passphrase.read(file.get());
    }
    String name = Printable.line(keyFile.toString());
    return ask("passphrase of " + name + ": ", name + ": is encrypted");
  }

  @Override
  public Optional<Passphrase> forNewKey() throws KeyException {
    if (file.isPresent()) {
      return Optional.of(Passphrase.read(file.get()).forNewKey());
    }
    return encryptNew ? Optional.of(askTwice()) : Optional.empty();
  }

  private Passphrase askTwice() throws KeyException {
    Passphrase first = ask("passphrase for the new key: ", "there is nobody to ask").forNewKey();
    if (!first.isSame(ask("the same once more: ", ""))) {
      throw new KeyException("the two passphrases differ; no key was made");
    }
    return first;
  }

  private Passphrase ask(String question, String why) throws KeyException {
    if (terminal.isEmpty()) {
      throw new KeyException(
          why
              + "; name the file that holds the passphrase with --passphrase-file or"
              + " THUMBSEAL_PASSPHRASE_FILE, or start it on a terminal");
    }
    char[] typed =
        terminal.get().secret(question).orElseThrow(() -> new KeyException("no passphrase given"));
    try {
      return Passphrase.of(typed);
    } finally {
      Arrays.fill(typed, '\0');
    }
  }
}
