package org.thumbseal.cli;

import java.io.PrintWriter;
import java.nio.file.Path;
import java.util.concurrent.Callable;
import org.thumbseal.json.Printable;
import org.thumbseal.seal.OpenedKey;
import org.thumbseal.seal.VerifyingKey;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.Spec;

/** Makes, shows and changes signing keys, and says whose keys are trusted. */
@Command(
    name = "key",
    description = "Make, show and change signing keys; trust the keys of others.",
    mixinStandardHelpOptions = true,
    subcommands = {
      KeyNewCommand.class,
      KeyShowCommand.class,
      KeyRenewCommand.class,
      KeyTrustCommand.class,
      KeyTrustedCommand.class
    })
public final class KeyCommand implements Callable<Integer> {
  @Spec private CommandSpec spec = CommandSpec.create();

  @Override
  public Integer call() {
    throw new ParameterException(
        spec.commandLine(), "say what to do: key new, show, renew, trust or trusted");
  }

  /** What there is to say of a key, as lines for people. */
  static void describe(CommandSpec spec, Path file, String remark, VerifyingKey key) {
    PrintWriter out = spec.commandLine().getOut();
    out.println("private key  " + Printable.line(file.toString()) + remark);
    out.println("thumbprint   " + key.kid());
    out.println("fingerprint  " + key.fingerprint());
    out.flush();
  }

  /** What was put in order when the key was opened. */
  static void tellNotes(CommandSpec spec, OpenedKey key) {
    PrintWriter err = spec.commandLine().getErr();
    key.notes().forEach(note -> err.println("thumbseal: " + Printable.line(note)));
  }
}
