package org.thumbseal.cli;

import java.nio.file.Path;
import org.jspecify.annotations.Nullable;
import org.thumbseal.seal.KeyStore;
import picocli.CommandLine.Option;

/** Which signing key a command works with. */
final class KeyOption {
  @Option(
      names = "--key",
      paramLabel = "FILE",
      description =
          "the signing key. Default: THUMBSEAL_KEY, else signing-key.pem in the user's"
              + " configuration")
  private @Nullable Path key;

  /** The file of the key, whether it exists or not. */
  Path file() {
    return key != null ? key : KeyStore.defaultFile(System.getenv());
  }

  /** Whether it was said which one. */
  boolean isGiven() {
    return key != null || !System.getenv().getOrDefault("THUMBSEAL_KEY", "").isEmpty();
  }
}
