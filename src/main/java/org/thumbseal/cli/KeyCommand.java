package org.thumbseal.cli;

import java.io.PrintWriter;
import java.nio.file.Path;
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
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.Spec;

/** Makes and shows signing keys. */
@Command(
    name = "key",
    description = "Make and show signing keys.",
    mixinStandardHelpOptions = true,
    subcommands = {KeyCommand.New.class, KeyCommand.Show.class})
public final class KeyCommand implements Callable<Integer> {
  @Spec private CommandSpec spec = CommandSpec.create();

  @Override
  public Integer call() {
    throw new ParameterException(spec.commandLine(), "say what to do: key new, or key show");
  }

  /** Makes a key. */
  @Command(
      name = "new",
      description = "Make a signing key; an existing one is never overwritten.",
      mixinStandardHelpOptions = true)
  static final class New implements Callable<Integer> {
    @Spec private CommandSpec spec = CommandSpec.create();
    @Mixin private KeyOption option = new KeyOption();

    @Override
    public Integer call() {
      OpenedKey key = opened(KeyStore::create, option.file());
      describe(spec, key);
      spec.commandLine()
          .getOut()
          .println("public key   " + Printable.line(KeyStore.publicFile(key.file()).toString()));
      return ExitCode.GOOD;
    }
  }

  /** Shows the public half of a key. */
  @Command(
      name = "show",
      description = "Show the public key, its thumbprint and a fingerprint to read out.",
      mixinStandardHelpOptions = true)
  static final class Show implements Callable<Integer> {
    @Spec private CommandSpec spec = CommandSpec.create();
    @Mixin private KeyOption option = new KeyOption();

    @Option(names = "--jwk", description = "print the public key as JWK and nothing else")
    private boolean jwk;

    @Option(
        names = "--pem",
        description = "print the public key as PEM and nothing else, for openssl")
    private boolean pem;

    @Override
    public Integer call() {
      show(opened(KeyStore::load, option.file()));
      return ExitCode.GOOD;
    }

    private void show(OpenedKey key) {
      VerifyingKey verifying = key.key().verifyingKey();
      PrintWriter out = spec.commandLine().getOut();
      if (jwk) {
        out.println(Canonical.text(verifying.jwk()));
      }
      if (pem) {
        out.print(verifying.pem());
      }
      if (!jwk && !pem) {
        describe(spec, key);
        out.println("jwk          " + Canonical.text(verifying.jwk()));
      }
      out.flush();
    }
  }

  private static void describe(CommandSpec spec, OpenedKey key) {
    PrintWriter out = spec.commandLine().getOut();
    out.println("private key  " + Printable.line(key.file().toString()));
    out.println("thumbprint   " + key.key().verifyingKey().kid());
    out.println("fingerprint  " + key.key().verifyingKey().fingerprint());
    out.flush();
  }

  private static OpenedKey opened(Opening opening, Path file) {
    try {
      return opening.open(file);
    } catch (KeyException e) {
      throw Failure.of(e);
    }
  }

  @FunctionalInterface
  private interface Opening {
    OpenedKey open(Path file) throws KeyException;
  }
}
