package org.thumbseal.cli;

import java.io.PrintWriter;
import java.nio.file.Path;
import java.util.Optional;
import java.util.concurrent.Callable;
import org.jspecify.annotations.Nullable;
import org.thumbseal.json.Printable;
import org.thumbseal.seal.KeyException;
import org.thumbseal.seal.KeyStore;
import org.thumbseal.seal.RenewedKey;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Spec;

/** Puts a new key in the place of the one in use. */
@Command(
    name = "renew",
    description = {
      "Make a new key in the place of the one in use.",
      "The old private key is kept under another name, and what it sealed goes on to verify. Stop"
          + " programs that use the key first: they would go on with the old one."
    },
    mixinStandardHelpOptions = true)
final class KeyRenewCommand implements Callable<Integer> {
  @Spec private CommandSpec spec = CommandSpec.create();
  @Mixin private KeyOption option = new KeyOption();
  @Mixin private PassphraseOption passphrase = new PassphraseOption();

  @Option(
      names = "--passphrase",
      description = "encrypt the new key; an encrypted one is followed by one in any case")
  private boolean encrypt;

  @Option(
      names = "--name",
      paramLabel = "NAME",
      description = "whose keys they are, as 'verify' shows it")
  private @Nullable String name;

  private final Streams streams;

  KeyRenewCommand(Streams streams) {
    this.streams = streams;
  }

  @Override
  public Integer call() {
    Optional<String> owner = KeyTrustCommand.plain(name);
    try {
      Path file = option.file();
      boolean encrypted = encrypt || KeyStore.isEncrypted(file);
      var passphrases = new AskedPassphrases(passphrase.file(), streams.terminal(), encrypted);
      tell(KeyStore.renew(file, owner, passphrases));
      return ExitCode.GOOD;
    } catch (KeyException e) {
      throw Failure.of(e);
    }
  }

  private void tell(RenewedKey renewed) {
    KeyCommand.tellNotes(spec, renewed.key());
    Path file = renewed.key().file();
    KeyCommand.describe(spec, file, "", renewed.key().key().verifyingKey());
    PrintWriter out = spec.commandLine().getOut();
    out.println("public key   " + Printable.line(KeyStore.publicFile(file).toString()));
    out.println("old key      " + Printable.line(renewed.kept().toString()));
    out.println("trusted by   " + Printable.line(renewed.trusted().toString()));
    out.flush();
  }
}
