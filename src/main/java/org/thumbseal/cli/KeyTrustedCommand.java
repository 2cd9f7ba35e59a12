package org.thumbseal.cli;

import java.io.PrintWriter;
import java.util.concurrent.Callable;
import org.thumbseal.seal.KeyException;
import org.thumbseal.seal.KeyStore;
import org.thumbseal.seal.TrustStore;
import org.thumbseal.seal.TrustedKey;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Spec;

/** Lists whom one trusts. */
@Command(
    name = "trusted",
    description = "List the keys that 'verify' trusts without --trust: your own, and the others.",
    mixinStandardHelpOptions = true)
final class KeyTrustedCommand implements Callable<Integer> {
  @Spec private CommandSpec spec = CommandSpec.create();
  @Mixin private KeyOption option = new KeyOption();

  @Override
  public Integer call() {
    PrintWriter out = spec.commandLine().getOut();
    try {
      TrustStore.load(KeyStore.defaultTrust(option.file())).all().forEach(key -> tell(key, out));
      return ExitCode.GOOD;
    } catch (KeyException e) {
      throw Failure.of(e);
    }
  }

  private static void tell(TrustedKey key, PrintWriter out) {
    out.println(key.key().fingerprint() + "  " + key.text());
  }
}
