package org.thumbseal.cli;

import java.io.PrintWriter;
import java.time.Instant;
import java.util.EnumSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.concurrent.Callable;
import org.thumbseal.history.Concern;
import org.thumbseal.history.Outlook;
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
      "With --register also those that no test ever judged, and what else is overdue on them."
          + " Exit code 1: one failed its last test, was left open, was never judged, or its test is"
          + " overdue; for other work that is overdue: thumbseal due."
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
        options
            .records()
            .ask(err, open -> new FleetOutlooks(open, today, options.zone()).all(register));
    show(outlooks, today);
    boolean pressing = outlooks.stream().anyMatch(o -> PRESSING.contains(o.concern()));
    return pressing ? ExitCode.NOT_PASSED : ExitCode.GOOD;
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
