package org.thumbseal.cli;

import java.nio.file.Path;
import java.util.List;
import org.thumbseal.seal.KeyException;
import org.thumbseal.seal.KeyStore;
import org.thumbseal.seal.TrustStore;
import picocli.CommandLine.Option;

/** Whose seals a command trusts. */
final class TrustOption {
  @Option(
      names = "--trust",
      paramLabel = "FILE|DIR",
      description =
          "public keys (JWK) to trust; repeatable. Default: your own key, and those in the folder"
              + " 'trusted' beside it")
  private List<Path> trust = List.of();

  /** The keys that were named, else those that lie beside the user's own. */
  TrustStore trusted(Path keyFile) {
    try {
      return TrustStore.load(trust.isEmpty() ? KeyStore.defaultTrust(keyFile) : trust);
    } catch (KeyException e) {
      throw Failure.of(e);
    }
  }
}
