package org.thumbseal.cli;

import java.nio.file.InvalidPathException;
import java.nio.file.Path;
import java.util.Optional;
import java.util.concurrent.Callable;
import org.thumbseal.json.Printable;
import org.thumbseal.seal.KeyException;
import org.thumbseal.seal.KeyStore;
import org.thumbseal.seal.OpenedKey;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Spec;

/** Makes a key. */
@Command(
    name = "new",
    description = "Make a signing key; an existing one is never overwritten.",
    mixinStandardHelpOptions = true)
final class KeyNewCommand implements Callable<Integer> {
  @Spec private CommandSpec spec = CommandSpec.create();
  @Mixin private KeyOption option = new KeyOption();
  @Mixin private PassphraseOption passphrase = new PassphraseOption();

  @Option(
      names = "--passphrase",
      description = "encrypt the key; the passphrase is asked for twice")
  private boolean encrypt;

  private final Streams streams;

  KeyNewCommand(Streams streams) {
    this.streams = streams;
  }

  @Override
  public Integer call() {
    Path file = option.isGiven() ? option.file() : asked();
    try {
      OpenedKey key =
          KeyStore.create(
              file, new AskedPassphrases(passphrase.file(), streams.terminal(), encrypt));
      KeyCommand.describe(spec, key.file(), "", key.key().verifyingKey());
    } catch (KeyException e) {
      throw Failure.of(e);
    }
    spec.commandLine()
        .getOut()
        .println("public key   " + Printable.line(KeyStore.publicFile(file).toString()));
    return ExitCode.GOOD;
  }

  /** Where the key goes: what a person answers, if there is one and he says anything. */
  private Path asked() {
    Path usual = option.file();
    String question =
        "file for the new key [" + Printable.line(usual.toString()) + "], Enter to take it: ";
    Optional<String> answer = streams.terminal().map(t -> typed(t, question));
    try {
      return answer.filter(a -> !a.isBlank()).map(a -> Path.of(a.strip())).orElse(usual);
    } catch (InvalidPathException e) {
      throw Failure.usage("this is no name of a file");
    }
  }

  private static String typed(Terminal terminal, String question) {
    return terminal.line(question).orElseThrow(() -> Failure.usage("no file named; no key made"));
  }
}
