package org.thumbseal.cli;

import java.io.PrintWriter;
import java.nio.file.Path;
import java.util.Optional;
import java.util.concurrent.Callable;
import org.thumbseal.json.Canonical;
import org.thumbseal.json.Printable;
import org.thumbseal.seal.KeyException;
import org.thumbseal.seal.KeyStore;
import org.thumbseal.seal.OpenedKey;
import org.thumbseal.seal.VerifyingKey;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Spec;

/** Shows the public half of a key. */
@Command(
    name = "show",
    description = {
      "Show the public key, its thumbprint and a fingerprint to read out.",
      "An encrypted key is opened only when its passphrase is in a file; else the public key beside"
          + " it is shown."
    },
    mixinStandardHelpOptions = true)
final class KeyShowCommand implements Callable<Integer> {
  @Spec private CommandSpec spec = CommandSpec.create();
  @Mixin private KeyOption option = new KeyOption();
  @Mixin private PassphraseOption passphrase = new PassphraseOption();

  @Option(names = "--jwk", description = "print the public key as JWK and nothing else")
  private boolean jwk;

  @Option(
      names = "--pem",
      description = "print the public key as PEM and nothing else, for openssl")
  private boolean pem;

  private final Streams streams;

  KeyShowCommand(Streams streams) {
    this.streams = streams;
  }

  @Override
  public Integer call() {
    try {
      Path file = option.file();
      boolean closed = KeyStore.isEncrypted(file) && passphrase.file().isEmpty();
      Optional<VerifyingKey> beside = KeyStore.publicHalf(file);
      if (closed && beside.isPresent()) {
        show(file, beside.get(), " (encrypted; shown is the public key beside it)");
        return ExitCode.GOOD;
      }
      return opened(file, beside);
    } catch (KeyException e) {
      throw Failure.of(e);
    }
  }

  private int opened(Path file, Optional<VerifyingKey> beside) throws KeyException {
    OpenedKey key =
        KeyStore.load(file, new AskedPassphrases(passphrase.file(), streams.terminal(), false));
    KeyCommand.tellNotes(spec, key);
    VerifyingKey own = key.key().verifyingKey();
    show(file, own, "");
    // Opening may have put another public key there, where a change had been cut short.
    if (key.notes().isEmpty() && beside.filter(b -> !b.equals(own)).isPresent()) {
      Path other = KeyStore.publicFile(file);
      spec.commandLine()
          .getErr()
          .println("thumbseal: " + Printable.line(other + ": is not the public half of this key"));
      return ExitCode.NOT_PASSED;
    }
    return ExitCode.GOOD;
  }

  private void show(Path file, VerifyingKey key, String remark) {
    PrintWriter out = spec.commandLine().getOut();
    if (jwk) {
      out.println(Canonical.text(key.jwk()));
    }
    if (pem) {
      out.print(key.pem());
    }
    if (!jwk && !pem) {
      KeyCommand.describe(spec, file, remark, key);
      out.println("jwk          " + Canonical.text(key.jwk()));
    }
    out.flush();
  }
}
