package org.thumbseal.cli;

import java.io.PrintWriter;
import java.time.Instant;
import java.util.ArrayList;
import java.util.EnumSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.concurrent.Callable;
import org.thumbseal.history.Concern;
import org.thumbseal.history.History;
import org.thumbseal.history.Outlook;
import org.thumbseal.history.Pump;
import org.thumbseal.index.IndexedAsset;
import org.thumbseal.index.Records;
import org.thumbseal.index.RecordsException;
import org.thumbseal.json.Printable;
import org.thumbseal.register.Register;
import org.thumbseal.report.FleetPage;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Spec;

/** All pumps at a glance, worst first. */
@Command(
    name = "fleet",
    mixinStandardHelpOptions = true,
    description = {
      "Show all pumps, one a line, the one that needs somebody first on top.",
      "With --register also those that no test ever judged. Exit code 1: one failed its last test,"
          + " is overdue, or was never judged."
    })
final class FleetCommand implements Callable<Integer> {
  private static final Set<Concern> PRESSING =
      EnumSet.of(Concern.FAILED, Concern.UNTESTED, Concern.UNDECIDED, Concern.OVERDUE);

  @Spec private CommandSpec spec = CommandSpec.create();
  @Mixin private HistoryOptions options = new HistoryOptions();

  @Override
  public Integer call() {
    PrintWriter err = spec.commandLine().getErr();
    Optional<Register> register = options.register(err);
    Instant today = options.today();
    List<Outlook> outlooks =
        Outlook.ordered(options.records().ask(err, r -> outlooks(r, register, today)));
    show(outlooks, today);
    boolean pressing = outlooks.stream().anyMatch(o -> PRESSING.contains(o.concern()));
    return pressing ? ExitCode.NOT_PASSED : ExitCode.GOOD;
  }

  private List<Outlook> outlooks(Records records, Optional<Register> register, Instant today)
      throws RecordsException {
    List<Outlook> all = new ArrayList<>();
    for (Pump pump : pumps(records, register)) {
      History history = History.of(pump, PastTests.of(records, pump.id()), today);
      all.add(Outlook.of(history, options.zone()));
    }
    return all;
  }

  /** Those of the register, and those of which there are tests. */
  private static Iterable<Pump> pumps(Records records, Optional<Register> register)
      throws RecordsException {
    Map<String, Pump> pumps = new LinkedHashMap<>();
    register.ifPresent(r -> r.assets().forEach(a -> pumps.put(a.id(), HistoryOptions.pump(a))));
    for (IndexedAsset asset : records.assets()) {
      pumps.computeIfAbsent(asset.asset(), Pump::unlisted);
    }
    return pumps.values();
  }

  private void show(List<Outlook> outlooks, Instant today) {
    PrintWriter out = spec.commandLine().getOut();
    if (options.output().isPresent()) {
      String html = FleetPage.html(outlooks, today, options.zone());
      options.write(options.output().get(), html, out);
    } else {
      FleetPage.lines(outlooks, options.zone()).forEach(l -> out.println(Printable.line(l)));
    }
    out.flush();
  }
}
