package org.thumbseal.cli;

import java.io.PrintWriter;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.Callable;
import org.jspecify.annotations.Nullable;
import org.thumbseal.archive.Archive;
import org.thumbseal.archive.ArchiveException;
import org.thumbseal.archive.StoredResult;
import org.thumbseal.calibration.Calibration;
import org.thumbseal.calibration.CalibrationFacts;
import org.thumbseal.calibration.CalibrationPoint;
import org.thumbseal.calibration.CalibrationRefused;
import org.thumbseal.json.CalibrationTree;
import org.thumbseal.json.Canonical;
import org.thumbseal.json.Printable;
import org.thumbseal.link.HostClock;
import org.thumbseal.link.Link;
import org.thumbseal.link.LinkAddress;
import org.thumbseal.link.LinkAddressException;
import org.thumbseal.link.LinkConnection;
import org.thumbseal.link.LinkUnavailable;
import org.thumbseal.link.Links;
import org.thumbseal.record.ResultId;
import org.thumbseal.seal.Sha256;
import org.thumbseal.wire.LineFormat;
import org.thumbseal.wire.WireRecord.Identity;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Spec;

/** Holds a sensor against a reference gauge, and stores what came of it. */
@Command(
    name = "calibrate",
    mixinStandardHelpOptions = true,
    description = {
      "Calibrate a sensor against a reference gauge, and seal the calibration.",
      "Type the pairs with --pair, or name the sensor's --port and type what the gauge reads, point"
          + " by point. Use an empty jar and a valid reference gauge; follow your local rules."
    })
final class CalibrateCommand implements Callable<Integer> {
  @Spec private CommandSpec spec = CommandSpec.create();
  @Mixin private CalibrationSaid said = new CalibrationSaid();
  @Mixin private ArchiveOptions storing = new ArchiveOptions();
  @Mixin private FormatOption format = new FormatOption();

  @Option(
      names = "--pair",
      arity = "1..*",
      paramLabel = "SENSOR=REFERENCE",
      description =
          "what both read at one vacuum, in kPa or with the unit: 79.6=81.2, \"79.6=609 mmHg\"")
  private List<String> pairs = List.of();

  @Option(
      names = "--port",
      paramLabel = "P",
      description =
          "read the sensor here; written as for 'watch --port'. auto takes the only sensor on USB")
  private @Nullable String port;

  @Option(names = "--json", description = "print the sealed document and nothing else")
  private boolean json;

  private final Streams streams;
  private final HostClock clock;

  CalibrateCommand(Streams streams) {
    this(streams, HostClock.system());
  }

  CalibrateCommand(Streams streams, HostClock clock) {
    this.streams = streams;
    this.clock = clock;
  }

  @Override
  public Integer call() {
    if (pairs.isEmpty() == (port == null)) {
      throw Failure.usage("give the pairs (--pair 0=0 --pair 79.6=81.2), or the sensor's --port");
    }
    // What is wrong with the options is to be said before anybody goes to the pump.
    said.facts(said.sensor().orElse("unknown"), clock.wall());
    String address = port;
    if (address == null) {
      Calibration calibration = typed();
      try (Stored stored = new Stored()) {
        answer(calibration, stored.store(calibration));
      }
    } else {
      LinkAddress parsed = parse(address);
      try (Stored stored = new Stored()) {
        Calibration calibration = live(address, parsed);
        answer(calibration, stored.store(calibration));
      }
    }
    return ExitCode.GOOD;
  }

  private Calibration typed() {
    String sensor = said.sensor().orElseThrow(() -> Failure.usage("name the --sensor"));
    List<CalibrationPoint> points = new ArrayList<>();
    try {
      for (String pair : pairs) {
        points.add(PressureText.pair(pair));
      }
      return calibration(sensor, points);
    } catch (IllegalArgumentException e) {
      throw Failure.usage("--pair: " + e.getMessage());
    } catch (CalibrationRefused e) {
      throw Failure.usage(String.valueOf(e.getMessage()));
    }
  }

  private Calibration calibration(String sensor, List<CalibrationPoint> points)
      throws CalibrationRefused {
    CalibrationFacts facts = said.facts(sensor, clock.wall());
    String digest = Sha256.hex(Canonical.bytes(CalibrationTree.said(facts, points)));
    return Calibration.of(ResultId.of(digest, 1), facts, points);
  }

  private Calibration live(String address, LinkAddress parsed) {
    Links links = new Links(new SimulatedPumps(), streams.in(), clock);
    Link link = AutoPort.one(parsed, links, this::say);
    try (LinkConnection connection = link.open()) {
      return new CalibrationDialogue(
              new CalibrationDialogue.Parts(
                  new LiveReadings(connection, said.sensor(), lines(), clock),
                  parsed instanceof LinkAddress.RawFile,
                  new TypedLines(streams.in()),
                  spec.commandLine().getErr(),
                  (identity, points) -> calibration(id(identity), points)))
          .run();
    } catch (LinkUnavailable e) {
      String message = address + ": " + e.getMessage();
      throw e.isMistake() ? Failure.usage(message) : Failure.machine(message);
    }
  }

  private LineFormat lines() {
    return format.format().<LineFormat>map(plain -> plain).orElse(LineFormat.PROTOCOL_1);
  }

  private void say(String notice) {
    spec.commandLine().getErr().println("thumbseal: " + Printable.line(notice));
  }

  private LinkAddress parse(String address) {
    try {
      LinkAddress parsed = LinkAddress.parse(address);
      format.require(List.of(parsed));
      if (format.format().isPresent() && said.sensor().isEmpty()) {
        throw Failure.usage("plain lines do not say whose they are; name the --sensor");
      }
      if (parsed instanceof LinkAddress.StandardInput) {
        throw Failure.usage("--port: standard input is where you type");
      }
      return parsed;
    } catch (LinkAddressException e) {
      throw Failure.usage("--port: " + e.getMessage());
    }
  }

  private String id(Optional<Identity> identity) {
    return identity
        .map(Identity::sensorId)
        .or(said::sensor)
        .orElseThrow(() -> Failure.usage("the sensor did not say who it is; name the --sensor"));
  }

  /** The directory, open from before the first reading, so that none is taken in vain. */
  private final class Stored implements AutoCloseable {
    private final Archive archive =
        storing.open(storing.results().orElse(Path.of("results")), spec.commandLine().getErr());

    StoredResult store(Calibration calibration) {
      try {
        return archive.store(CalibrationTree.of(calibration));
      } catch (ArchiveException e) {
        throw Failure.machine(String.valueOf(e.getMessage()));
      }
    }

    @Override
    public void close() {
      storing.close(archive);
    }
  }

  private void answer(Calibration calibration, StoredResult stored) {
    PrintWriter out = spec.commandLine().getOut();
    if (json) {
      out.println(Printable.json(Canonical.text(stored.sealed())));
    } else {
      CalibrationText.lines(calibration).forEach(line -> out.println(Printable.line(line)));
      out.println("  " + Printable.line(stored.document().toString()));
    }
  }
}
