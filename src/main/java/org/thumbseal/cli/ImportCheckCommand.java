package org.thumbseal.cli;

import java.io.IOException;
import java.io.OutputStreamWriter;
import java.io.Writer;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.List;
import java.util.Set;
import java.util.concurrent.Callable;
import org.thumbseal.archive.ArchiveException;
import org.thumbseal.exchange.FlatResult;
import org.thumbseal.exchange.JsonLines;
import org.thumbseal.exchange.KeyValueText;
import org.thumbseal.exchange.Layout;
import org.thumbseal.exchange.ResultReader;
import org.thumbseal.exchange.ResultRefused;
import org.thumbseal.exchange.ResultTable;
import org.thumbseal.exchange.SealedResult;
import org.thumbseal.json.Printable;
import org.thumbseal.seal.TrustStore;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;

/** The reference importer: what a logbook should store of a result, or why it should not. */
@Command(
    name = "import-check",
    mixinStandardHelpOptions = true,
    description = {
      "Print what a logbook should store of a result, or refuse it and say why.",
      "Refused is what has no good seal by a trusted key, what is of a kind or version not known"
          + " here, and a result whose recording is missing or is another. Corrections that lie"
          + " beside it are applied and told. Exit code 0: store it; 1: do not; 2: not readable."
    })
final class ImportCheckCommand implements Callable<Integer> {
  @Spec private CommandSpec spec = CommandSpec.create();

  @Parameters(arity = "1..*", paramLabel = "FILE", description = "sealed results")
  private List<Path> files = List.of();

  @Option(
      names = "--json",
      description = "one line of JSON for each; otherwise lines 'key=value', an empty one between")
  private boolean json;

  @Option(
      names = "--without-capture",
      description = "take a result whose recording did not come along; one that differs is refused")
  private boolean withoutCapture;

  @Mixin private KeyOption key = new KeyOption();
  @Mixin private TrustOption trust = new TrustOption();

  private final Streams streams;

  ImportCheckCommand(Streams streams) {
    this.streams = streams;
  }

  @Override
  public Integer call() {
    TrustStore trusted = trust.trusted(key.file());
    Writer out = new OutputStreamWriter(streams.out(), StandardCharsets.UTF_8);
    ResultTable table = json ? new JsonLines(Layout.OWN, out) : new KeyValueText(out);
    int worst = ExitCode.GOOD;
    try {
      for (Path file : files) {
        worst = Math.max(worst, check(file, trusted, table));
      }
      table.end();
    } catch (IOException e) {
      throw Failure.machine(FileTrouble.inWords(e));
    }
    return worst;
  }

  private int check(Path file, TrustStore trusted, ResultTable table) throws IOException {
    try {
      ResultReader reader = new ResultReader(trusted, this::say);
      reader.correctedBy(Set.of(ResultReader.around(file)));
      SealedResult sealed = reader.read(file);
      FlatResult flat = FlatResult.of(sealed);
      String why = refusal(sealed);
      if (!why.isEmpty()) {
        say(file + ": do not store it: " + why);
        return ExitCode.NOT_PASSED;
      }
      sealed.corrections().forEach(c -> say(file + ": " + CorrectionText.line(c)));
      table.result(sealed, flat);
      return ExitCode.GOOD;
    } catch (ResultRefused e) {
      say(file + (e.isReadable() ? ": do not store it: it " : ": ") + e.why());
      return e.isReadable() ? ExitCode.NOT_PASSED : ExitCode.USAGE;
    } catch (ArchiveException e) {
      say(String.valueOf(e.getMessage()));
      return ExitCode.USAGE;
    }
  }

  private String refusal(SealedResult sealed) {
    if (!sealed.seal().isTrusted()) {
      return sealed.seal().text();
    }
    return withoutCapture || sealed.hasCapture()
        ? ""
        : "its recording is not beside it; fetch it, or say --without-capture";
  }

  private void say(String message) {
    spec.commandLine().getErr().println("thumbseal: " + Printable.line(message));
  }
}
