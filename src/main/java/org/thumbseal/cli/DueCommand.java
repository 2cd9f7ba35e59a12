package org.thumbseal.cli;

import java.io.PrintWriter;
import java.nio.file.Path;
import java.time.LocalDate;
import java.time.ZoneId;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.concurrent.Callable;
import org.jspecify.annotations.Nullable;
import org.thumbseal.care.Due;
import org.thumbseal.care.Round;
import org.thumbseal.care.Urgency;
import org.thumbseal.json.Canonical;
import org.thumbseal.json.Printable;
import org.thumbseal.link.HostClock;
import org.thumbseal.register.KeptRegister;
import org.thumbseal.register.Register;
import org.thumbseal.report.DueCalendar;
import org.thumbseal.report.RoundPage;
import org.thumbseal.report.RoundText;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Spec;

/** What has to be done to which pump, and by when. */
@Command(
    name = "due",
    mixinStandardHelpOptions = true,
    description = {
      "Show what is due, place by place: test, inspection, sterilisation, calibration of sensors.",
      "How often is in the register of pumps. What 'done' recorded counts, and tests that passed or"
          + " failed; one that decided nothing does not. Without --register only pumps that were"
          + " tested are known, and every one of them is taken to be in use.",
      "Exit code 1: something is due within a week, or overdue."
    })
final class DueCommand implements Callable<Integer> {
  @Spec private CommandSpec spec = CommandSpec.create();
  @Mixin private RecordsOptions records = new RecordsOptions();
  @Mixin private RegisterOption register = new RegisterOption();

  @Option(
      names = "--on",
      paramLabel = "DATE",
      description = "as if this were today: 2026-03-02; what was done later is left out")
  private @Nullable String on;

  @Option(names = "--week", description = "only what is overdue or due within a week")
  private boolean week;

  @Option(
      names = {"-o", "--output"},
      paramLabel = "FILE.html",
      description = "write a page to print and take along")
  private @Nullable Path output;

  @Option(
      names = "--calendar",
      paramLabel = "FILE.ics",
      description = "write a calendar (iCalendar, RFC 5545) of everything up to a year ahead")
  private @Nullable Path calendar;

  @Option(names = "--json", description = "one line of JSON for each thing that is due")
  private boolean json;

  private final HostClock clock;

  DueCommand() {
    this(HostClock.system());
  }

  DueCommand(HostClock clock) {
    this.clock = clock;
  }

  @Override
  public Integer call() {
    PrintWriter err = spec.commandLine().getErr();
    LocalDate today = SaidDate.or("--on", on, SaidDate.today(clock));
    Optional<Register> kept = register.read(Optional.empty(), err).map(KeptRegister::register);
    List<Due> dues =
        records.ask(err, open -> new CareRecord(open, ZoneId.systemDefault()).dues(kept, today));
    Round round = Round.of(dues, week ? Urgency.THIS_WEEK : Urgency.THIS_MONTH);
    show(round, dues, today);
    boolean pressing = round.count(Urgency.OVERDUE) + round.count(Urgency.THIS_WEEK) > 0;
    return pressing ? ExitCode.NOT_PASSED : ExitCode.GOOD;
  }

  private void show(Round round, List<Due> dues, LocalDate today) {
    PrintWriter out = spec.commandLine().getOut();
    Path page = output;
    Path file = calendar;
    if (page != null) {
      write(page, ".html", RoundPage.of(round, today));
    }
    if (file != null) {
      List<Due> year =
          dues.stream().filter(due -> due.term().on().isBefore(today.plusYears(1))).toList();
      write(file, ".ics", DueCalendar.of(year, today, clock.wall()));
    }
    if (json) {
      dues.forEach(due -> out.println(Canonical.text(DueJson.of(due))));
    } else if (page == null && file == null) {
      out.print(RoundText.of(round, today));
    }
    out.flush();
  }

  private void write(Path file, String ending, String content) {
    Path folder = Optional.ofNullable(file.getParent()).orElse(Path.of(""));
    String name = String.valueOf(file.getFileName());
    if (!name.toLowerCase(Locale.ROOT).endsWith(ending)) {
      throw Failure.usage(file + ": the name of this file has to end with " + ending);
    }
    Path written = ReportFolder.at(folder).write(name, content);
    spec.commandLine().getErr().println(Printable.line(written.toString()));
  }
}
