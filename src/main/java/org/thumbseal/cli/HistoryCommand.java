package org.thumbseal.cli;

import java.io.PrintWriter;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.Callable;
import org.thumbseal.history.History;
import org.thumbseal.history.PastTest;
import org.thumbseal.history.Pump;
import org.thumbseal.json.Canonical;
import org.thumbseal.json.Printable;
import org.thumbseal.report.HistoryPage;
import org.thumbseal.report.HistoryText;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;

/** The tests of one pump over the years, and where they lead. */
@Command(
    name = "history",
    mixinStandardHelpOptions = true,
    description = {
      "Show all tests of a pump, whether it gets worse, and when it reaches a limit.",
      "A trend is stated only where it is significant; a jump, as after a new part, is none."
    })
final class HistoryCommand implements Callable<Integer> {
  @Spec private CommandSpec spec = CommandSpec.create();

  @Parameters(paramLabel = "ASSET", description = "the pump")
  private String asset = "";

  @Option(names = "--json", description = "one JSON object instead of a table")
  private boolean json;

  @Mixin private HistoryOptions options = new HistoryOptions();

  @Override
  public Integer call() {
    PrintWriter err = spec.commandLine().getErr();
    Optional<Pump> listed =
        options.register(err).flatMap(r -> r.of(asset)).map(HistoryOptions::pump);
    List<PastTest> tests = options.records().ask(err, records -> PastTests.of(records, asset));
    if (tests.isEmpty() && listed.isEmpty()) {
      throw Failure.usage(asset + ": no test of such a pump; thumbseal fleet names all there are");
    }
    show(History.of(listed.orElseGet(() -> Pump.unlisted(asset)), tests, options.today()));
    return ExitCode.GOOD;
  }

  private void show(History history) {
    PrintWriter out = spec.commandLine().getOut();
    if (options.output().isPresent()) {
      options.write(options.output().get(), HistoryPage.html(history, options.zone()), out);
    } else if (json) {
      out.println(Printable.json(Canonical.text(HistoryJson.of(history))));
    } else {
      HistoryText.lines(history, options.zone()).forEach(l -> out.println(Printable.line(l)));
    }
    out.flush();
  }
}
