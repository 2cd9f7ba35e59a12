package org.thumbseal.cli;

import java.io.PrintWriter;
import java.nio.file.Path;
import java.util.Optional;
import java.util.concurrent.Callable;
import org.jspecify.annotations.Nullable;
import org.thumbseal.json.Printable;
import org.thumbseal.seal.KeyException;
import org.thumbseal.seal.TrustFolder;
import org.thumbseal.seal.TrustedKey;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;

/** Trusts somebody's public key. */
@Command(
    name = "trust",
    description = {
      "Trust the public key of somebody else.",
      "Compare the fingerprint with its owner first, on the phone or face to face: a file that came"
          + " by mail may be anybody's."
    },
    mixinStandardHelpOptions = true)
final class KeyTrustCommand implements Callable<Integer> {
  private static final int LONGEST_NAME = 100;

  @Spec private CommandSpec spec = CommandSpec.create();
  @Mixin private KeyOption option = new KeyOption();

  @Parameters(paramLabel = "FILE.jwk", description = "their public key: thumbseal key show --jwk")
  private Path file = Path.of("");

  @Option(names = "--name", required = true, paramLabel = "NAME", description = "whose key it is")
  private String name = "";

  @Option(
      names = "--from",
      paramLabel = "DATE",
      description = "trust documents from this day (UTC) or time (RFC 3339) on")
  private @Nullable String from;

  @Option(names = "--until", paramLabel = "DATE", description = "trust documents up to it")
  private @Nullable String until;

  private final Streams streams;

  KeyTrustCommand(Streams streams) {
    this.streams = streams;
  }

  @Override
  public Integer call() {
    String owner = plain(name).orElseThrow();
    TrustFolder folder = new TrustFolder(option.file());
    try {
      TrustedKey key =
          TrustFolder.candidate(file, owner, Optional.ofNullable(from), Optional.ofNullable(until));
      folder.requireNew(key);
      PrintWriter out = spec.commandLine().getOut();
      out.println("fingerprint  " + key.key().fingerprint());
      out.flush();
      confirm();
      out.println("trusted      " + key.text());
      out.println("file         " + Printable.line(folder.add(key).toString()));
      return ExitCode.GOOD;
    } catch (KeyException e) {
      throw Failure.of(e);
    }
  }

  /** A person is asked; a script has said what it wants. */
  private void confirm() {
    Optional<Terminal> terminal = streams.terminal();
    if (terminal.isEmpty()) {
      spec.commandLine()
          .getErr()
          .println("thumbseal: compare the fingerprint with its owner on the phone");
      return;
    }
    String question = "does its owner read out the same fingerprint? type yes to trust the key: ";
    if (!terminal.get().line(question).orElse("").strip().equalsIgnoreCase("yes")) {
      throw Failure.usage("not trusted; nothing was changed");
    }
  }

  /** A name that a person can read. */
  static Optional<String> plain(@Nullable String name) {
    Optional<String> given = Optional.ofNullable(name).map(String::strip);
    if (given.filter(KeyTrustCommand::isNoName).isPresent()) {
      throw Failure.usage("--name must be 1 to " + LONGEST_NAME + " plain characters");
    }
    return given;
  }

  private static boolean isNoName(String name) {
    return name.isEmpty() || name.length() > LONGEST_NAME || !Printable.line(name).equals(name);
  }
}
