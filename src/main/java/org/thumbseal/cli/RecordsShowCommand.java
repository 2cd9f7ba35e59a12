package org.thumbseal.cli;

import java.io.PrintWriter;
import java.util.TreeMap;
import java.util.concurrent.Callable;
import org.thumbseal.index.KeptOut;
import org.thumbseal.index.Records;
import org.thumbseal.index.RecordsException;
import org.thumbseal.index.RecordsSummary;
import org.thumbseal.json.Printable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Spec;

/** Says what the index holds. */
@Command(
    name = "show",
    description = "Say what the index holds, as it is: how many of each kind, what was kept out.",
    mixinStandardHelpOptions = true)
final class RecordsShowCommand implements Callable<Integer> {
  @Spec private CommandSpec spec = CommandSpec.create();
  @Mixin private RecordsOptions options = new RecordsOptions();

  @Override
  public Integer call() {
    Records records = options.open(spec.commandLine().getErr());
    try {
      show(records.summary(), spec.commandLine().getOut());
      return ExitCode.GOOD;
    } catch (RecordsException e) {
      throw RecordsOption.failure(e);
    } finally {
      RecordsOptions.close(records);
    }
  }

  private static void show(RecordsSummary summary, PrintWriter out) {
    out.println("base         " + Printable.line(summary.base()));
    out.println("version      " + summary.version());
    summary.directories().forEach(d -> out.println("results      " + Printable.line(d)));
    new TreeMap<>(summary.documents())
        .forEach((kind, count) -> out.println(count + "  " + Printable.line(kind)));
    if (summary.voided() > 0) {
      out.println(summary.voided() + "  of them void or of a leak search, and not counted");
    }
    out.println(summary.keptOut().count() + "  kept out");
    for (KeptOut file : summary.keptOut().first()) {
      out.println("  " + Printable.line(file.file() + ": " + file.reason()));
    }
  }
}
