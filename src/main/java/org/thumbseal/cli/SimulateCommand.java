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
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;

/** Lets a simulated sensor speak: into a capture file, to standard output, or to a port. */
@Command(
    name = "simulate",
    description = "Simulate a pump, a sensor and a test. No pump is tested by this.")
public final class SimulateCommand implements Callable<Integer> {
  private static final int GOOD = 0;
  private static final int MACHINE_FAILED = 3;
  private static final String KINDS =
      Arrays.stream(SimulationKind.values())
          .map(SimulationKind::code)
          .collect(Collectors.joining(", "));

  private final Streams streams;
  private final HostClock clock;

  @Spec
  @SuppressWarnings("NullAway.Init") // set by picocli before call()
  private CommandSpec spec;

  @Parameters(
      arity = "0..1",
      paramLabel = "KIND",
      description = "What to simulate; --list names the kinds.")
  private @Nullable String kind;

  @Mixin private final ScenarioOptions options = new ScenarioOptions();
  @Mixin private final SimulationTarget target = new SimulationTarget();

  @Option(
      names = "--truth",
      paramLabel = "FILE",
      description = "Also write what each test really was, as JSON.")
  private @Nullable Path truth;

  @Option(names = "--list", description = "List the kinds and do nothing else.")
  private boolean list;

  /** A command that writes through these streams and waits by this clock. */
  public SimulateCommand(Streams streams, HostClock clock) {
    this.streams = streams;
    this.clock = clock;
  }

  @Override
  public Integer call() {
    if (list) {
      list(spec.commandLine().getOut());
      return GOOD;
    }
    SimulationKind known = kind();
    Scenario scenario = scenario(known);
    try {
      write(known, scenario);
      return GOOD;
    } catch (IOException e) {
      spec.commandLine().getErr().println("simulate: " + FileTrouble.inWords(e));
      return MACHINE_FAILED;
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
      throw wrong("name what to simulate: " + KINDS);
    }
    return SimulationKind.ofCode(kind)
        .orElseThrow(() -> wrong("no kind '" + kind + "'; there are " + KINDS));
  }

  private Scenario scenario(SimulationKind known) {
    try {
      target.check();
      return options.scenario(known);
    } catch (IllegalArgumentException e) {
      throw wrong(String.valueOf(e.getMessage()));
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

  private ParameterException wrong(String message) {
    return new ParameterException(spec.commandLine(), message);
  }
}
