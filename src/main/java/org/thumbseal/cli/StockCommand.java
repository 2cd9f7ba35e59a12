package org.thumbseal.cli;

import java.io.PrintWriter;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.concurrent.Callable;
import org.jspecify.annotations.Nullable;
import org.thumbseal.json.Canonical;
import org.thumbseal.json.Printable;
import org.thumbseal.link.HostClock;
import org.thumbseal.register.KeptRegister;
import org.thumbseal.register.Register;
import org.thumbseal.report.StockPage;
import org.thumbseal.report.StockText;
import org.thumbseal.spares.Forecast;
import org.thumbseal.spares.Stock;
import org.thumbseal.spares.StockLine;
import org.thumbseal.spares.StockTemplate;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Spec;

/** Which spare parts are left, and which to order. */
@Command(
    name = "stock",
    mixinStandardHelpOptions = true,
    description = {
      "Show which spare parts are left, by when to order more, and how many.",
      "What was replaced is counted from the sealed tests; how many there were, the minimum and the"
          + " lead time come from a list kept in a spreadsheet (CSV).",
      "Exit code 1: something is to be ordered now, or is below its minimum."
    })
final class StockCommand implements Callable<Integer> {
  private static final int LONGEST_COVER = 730;

  @Spec private CommandSpec spec = CommandSpec.create();
  @Mixin private RecordsOptions records = new RecordsOptions();
  @Mixin private RegisterOption register = new RegisterOption();

  @Option(names = "--stock", paramLabel = "FILE", description = "list of spare parts, as CSV UTF-8")
  private @Nullable Path file;

  @Option(names = "--template", description = "print a list of spare parts to begin with")
  private boolean template;

  @Option(
      names = "--on",
      paramLabel = "DATE",
      description = "as if this were today: 2026-03-02; what was used later is left out")
  private @Nullable String on;

  @Option(
      names = "--cover",
      paramLabel = "DAYS",
      description = "how long an order is to last once it is there. Default: ${DEFAULT-VALUE}")
  private int cover = 91;

  @Option(names = "--order", description = "print the order list alone")
  private boolean order;

  @Option(
      names = {"-o", "--output"},
      paramLabel = "FILE.html",
      description = "write a page to print")
  private @Nullable Path output;

  @Option(names = "--json", description = "one line of JSON for each part")
  private boolean json;

  private final HostClock clock;

  StockCommand() {
    this(HostClock.system());
  }

  StockCommand(HostClock clock) {
    this.clock = clock;
  }

  @Override
  public Integer call() {
    Path given = file;
    if (template == (given != null)) {
      throw Failure.usage("name a list with --stock FILE, or --template for one to begin with");
    } else if (cover < 1 || cover > LONGEST_COVER) {
      throw Failure.usage("--cover " + cover + ": say 1 to " + LONGEST_COVER + " days");
    }
    if (given == null) {
      StockTemplate.lines().forEach(spec.commandLine().getOut()::println);
      spec.commandLine().getOut().flush();
      return ExitCode.GOOD;
    }
    Stock stock = stock(given);
    show(stock);
    return stock.isPressing() ? ExitCode.NOT_PASSED : ExitCode.GOOD;
  }

  private Stock stock(Path given) {
    PrintWriter err = spec.commandLine().getErr();
    LocalDate today = SaidDate.or("--on", on, SaidDate.today(clock));
    List<StockLine> lines = new StockFile(given, err).read(today);
    Optional<Register> kept = register.read(Optional.empty(), err).map(KeptRegister::register);
    PartsUsed used = records.ask(err, open -> PartsUsed.of(open, kept, today));
    return new Forecast(today, used.first(), cover).of(lines, used.uses());
  }

  private void show(Stock stock) {
    PrintWriter out = spec.commandLine().getOut();
    Path page = output;
    if (page != null) {
      write(page, StockPage.of(stock));
    }
    if (json) {
      stock.parts().forEach(p -> out.println(Printable.json(Canonical.text(StockJson.of(p)))));
    } else if (order) {
      out.print(StockText.orders(stock));
    } else if (page == null) {
      out.print(StockText.of(stock));
    }
    out.flush();
  }

  private void write(Path page, String content) {
    Path folder = Optional.ofNullable(page.getParent()).orElse(Path.of(""));
    String name = String.valueOf(page.getFileName());
    if (!name.toLowerCase(Locale.ROOT).endsWith(".html")) {
      throw Failure.usage(page + ": the name of this file has to end with .html");
    }
    Path written = ReportFolder.at(folder).write(name, content);
    spec.commandLine().getErr().println(Printable.line(written.toString()));
  }
}
