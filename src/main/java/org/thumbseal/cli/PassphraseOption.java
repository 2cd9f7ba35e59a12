package org.thumbseal.cli;

import java.nio.file.Path;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import org.thumbseal.seal.Passphrases;
import picocli.CommandLine.Option;

/** Where the passphrase of an encrypted key is. */
final class PassphraseOption {
  @Option(
      names = "--passphrase-file",
      paramLabel = "FILE",
      description =
          "holds the passphrase of the key; only you may read it. Default:"
              + " THUMBSEAL_PASSPHRASE_FILE, else it is asked for")
  private @Nullable Path file;

  /** The file, when one is named. */
  Optional<Path> file() {
    return Optional.ofNullable(file)
        .or(() -> Optional.ofNullable(System.getenv("THUMBSEAL_PASSPHRASE_FILE")).map(Path::of));
  }

  /** Passphrases from the file, else from the terminal of this process. */
  Passphrases passphrases() {
    return new AskedPassphrases(file(), Terminal.system(), false);
  }
}
