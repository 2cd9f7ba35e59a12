package org.thumbseal.cli;

import java.io.IOException;
import java.io.PrintWriter;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.Iterator;
import java.util.concurrent.Callable;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;
import org.thumbseal.link.HostClock;
import org.thumbseal.simulate.Scenario;
import org.thumbseal.simulate.SimulationKind;
import org.thumbseal.simulate.TimedLine;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;

/** Lets a simulated sensor speak: into a capture file, to standard output, or to a port. */
@Command(
    name = "simulate",
    mixinStandardHelpOptions = true,
    description = "Simulate a pump, a sensor and a test. No pump is tested by this.")
final class SimulateCommand implements Callable<Integer> {
  private static final String KINDS =
      Arrays.stream(SimulationKind.values())
          .map(SimulationKind::code)
          .collect(Collectors.joining(", "));

  private final Streams streams;
  private final HostClock clock;

  @Spec private CommandSpec spec = CommandSpec.create();

  @Parameters(
      arity = "0..1",
      paramLabel = "KIND",
      description = "what to simulate; --list names the kinds")
  private @Nullable String kind;

  @Mixin private ScenarioOptions options = new ScenarioOptions();
  @Mixin private SimulationTarget target = new SimulationTarget();

  @Option(
      names = "--truth",
      paramLabel = "FILE",
      description = "also write what each test really was, as JSON")
  private @Nullable Path truth;

  @Option(names = "--list", description = "list the kinds and do nothing else")
  private boolean list;

  SimulateCommand(Streams streams) {
    this(streams, HostClock.system());
  }

  SimulateCommand(Streams streams, HostClock clock) {
    this.streams = streams;
    this.clock = clock;
  }

  @Override
  public Integer call() {
    if (list) {
      list(spec.commandLine().getOut());
      return ExitCode.GOOD;
    }
    SimulationKind known = kind();
    Scenario scenario = scenario(known);
    try {
      write(known, scenario);
      return ExitCode.GOOD;
    } catch (IOException e) {
      throw Failure.machine(FileTrouble.inWords(e));
    }
  }

  private static void list(PrintWriter out) {
    for (SimulationKind each : SimulationKind.values()) {
      out.println(each.code() + " ".repeat(24 - each.code().length()) + each.description());
    }
    out.flush();
  }

  private SimulationKind kind() {
    if (kind == null) {
      throw Failure.usage("name what to simulate: " + KINDS);
    }
    return SimulationKind.ofCode(kind)
        .orElseThrow(() -> Failure.usage("no kind '" + kind + "'; there are " + KINDS));
  }

  private Scenario scenario(SimulationKind known) {
    try {
      target.check();
      return options.scenario(known);
    } catch (IllegalArgumentException e) {
      throw Failure.usage(String.valueOf(e.getMessage()));
    }
  }

  private void write(SimulationKind known, Scenario scenario) throws IOException {
    if (truth != null) {
      Files.writeString(truth, TruthJson.of(known, scenario));
    }
    Pace pace = new Pace(clock, target.inRealTime());
    try (LineSink sink = target.open(known, scenario, streams, clock)) {
      for (Iterator<TimedLine> lines = scenario.lines(); lines.hasNext(); ) {
        TimedLine line = lines.next();
        if (pace.holdsBack(line)) {
          sink.flush();
          pace.await(line);
        }
        sink.write(line);
      }
    }
  }
}
