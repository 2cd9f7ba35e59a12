package org.thumbseal.cli;

import java.io.PrintWriter;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.Callable;
import org.thumbseal.archive.Archive;
import org.thumbseal.daemon.BenchListener;
import org.thumbseal.daemon.OpenedLink;
import org.thumbseal.link.Link;
import org.thumbseal.link.LinkAddress;
import org.thumbseal.link.LinkAddressException;
import org.thumbseal.link.LinkUnavailable;
import org.thumbseal.pipeline.GradingSettings;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Spec;

/** The daemon: reads sensors, detects, grades, seals and writes until it is told to stop. */
@Command(
    name = "watch",
    mixinStandardHelpOptions = true,
    description = {
      "Read sensors, find the tests, grade, seal and write the results.",
      "Runs until it is told to stop (Ctrl-C or SIGTERM). Never connect the sensor to a unit in"
          + " use on a patient; use an empty, disinfected jar, and a filter before the sensor."
    })
final class WatchCommand implements Callable<Integer> {
  @Spec private CommandSpec spec = CommandSpec.create();

  @Option(
      names = "--port",
      required = true,
      paramLabel = "P",
      description =
          "a serial port (/dev/ttyUSB0, COM3, '/dev/serial/by-id/*tp-01*'), tcp:HOST:PORT, sim:KIND,"
              + " file:PATH, - for standard input, or auto: all ports on USB where a sensor says"
              + " who it is (opening a port can restart a board); may be given several times."
              + " Behind a port or auto: ?baud=N, and ?board=NAME for boards that take their"
              + " opening badly: reset-on-open, native-usb, boot-lines")
  private List<String> ports = new ArrayList<>();

  @Option(
      names = "--wait",
      description = "wait for a port that is not there yet, instead of giving up at the start")
  private boolean wait;

  @Mixin private GradingOptions grading = new GradingOptions();
  @Mixin private LineOptions lines = new LineOptions();
  @Mixin private ArchiveOptions storing = new ArchiveOptions();
  @Mixin private PageOptions paging = new PageOptions();
  @Mixin private CalibrationOptions calibrations = new CalibrationOptions();
  @Mixin private RecordsOption records = new RecordsOption();
  @Mixin private WatchFeedOptions feeding = new WatchFeedOptions();

  private final Streams streams;

  WatchCommand(Streams streams) {
    this.streams = streams;
  }

  @Override
  public Integer call() {
    // A mistake in it shall leave neither key nor folder behind.
    paging.address();
    paging.stations();
    records.address();
    feeding.target().ifPresent(to -> FeedTargets.warn(to, spec.commandLine().getErr()));
    var said = lines.into(grading.settings(spec.commandLine().getErr()));
    BenchPrinter printer =
        new BenchPrinter(spec.commandLine().getOut(), spec.commandLine().getErr());
    List<LinkAddress> addresses = addresses();
    lines.require(addresses);
    List<Link> links = AutoPort.links(addresses, Bench.links(streams.in()), wait, printer::notice);
    if (wait || links.size() > 1) {
      return watch(links, said, printer, true);
    }
    try (OpenedLink opened = OpenedLink.of(links.get(0))) {
      return watch(List.of(opened), said, printer, false);
    } catch (LinkUnavailable e) {
      String message = links.get(0).name() + ": " + e.getMessage();
      throw e.isMistake() ? Failure.usage(message) : Failure.machine(message);
    }
  }

  private int watch(List<Link> links, GradingSettings said, BenchPrinter printer, boolean waiting) {
    PrintWriter err = spec.commandLine().getErr();
    Path results = storing.results().orElse(Path.of("results"));
    Archive archive = storing.openForDaemon(results, err);
    try {
      var settings =
          said.withSensor(
              s ->
                  s.withCalibrations(
                      calibrations.load(Optional.of(results), storing.keyFile(), err)));
      WatchedPage page = new WatchedPage(paging, links, settings);
      var base = new WatchedRecords(records.address(), printer);
      var feed = new WatchedFeed(feeding.target(), printer);
      BenchListener listener = feed.listening(base.listening(page.listening(printer)));
      Bench bench = new Bench(links, new Bench.Parts(archive, listener, settings), waiting);
      bench.healthAlso(feed::line);
      Runnable served = page.serve(bench, new PageOptions.Place(results, storing.keyFile(), err));
      Runnable close =
          () -> {
            served.run();
            base.close();
            feed.close();
          };
      WarmUp.start();
      base.follow(results, calibrations.trusted(storing.keyFile()));
      feed.follow(feeding.place(results));
      try {
        return Orderly.run(bench, code -> closed(code, close, archive));
      } finally {
        close.run();
      }
    } finally {
      storing.close(archive);
    }
  }

  private int closed(int code, Runnable page, Archive archive) {
    page.run();
    storing.close(archive);
    return code;
  }

  private List<LinkAddress> addresses() {
    List<LinkAddress> addresses = new ArrayList<>();
    try {
      for (String port : ports) {
        addresses.add(LinkAddress.parse(port));
      }
    } catch (LinkAddressException e) {
      throw Failure.usage("--port: " + e.getMessage());
    }
    if (ports.stream().distinct().count() < ports.size()) {
      throw Failure.usage("--port: the same port is given twice");
    }
    boolean auto = addresses.stream().anyMatch(AutoPort::isMeant);
    if (auto && addresses.stream().filter(LinkAddress.Serial.class::isInstance).count() > 1) {
      throw Failure.usage("--port auto finds all ports on USB; name no other port beside it");
    }
    return addresses;
  }
}
