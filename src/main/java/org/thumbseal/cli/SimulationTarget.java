package org.thumbseal.cli;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import org.jspecify.annotations.Nullable;
import org.thumbseal.link.HostClock;
import org.thumbseal.simulate.Scenario;
import org.thumbseal.simulate.SimulationKind;
import picocli.CommandLine.Option;

/** Options that say where simulated lines go, and how fast. */
final class SimulationTarget {
  private static final Path STANDARD_OUTPUT = Path.of("-");

  @Option(
      names = "--out",
      paramLabel = "FILE",
      description = "write a capture file; - writes bare lines to standard output (default)")
  private @Nullable Path out;

  @Option(
      names = "--port",
      paramLabel = "DEVICE",
      description = "write to a port or pseudo-terminal, in real time")
  private @Nullable Path port;

  @Option(names = "--real-time", description = "write each line when it is due")
  private boolean realTime;

  @Option(names = "--at-once", description = "write without waiting, to a port too")
  private boolean atOnce;

  @Option(names = "--asset", paramLabel = "ID", description = "pump to name in the capture file")
  private @Nullable String asset;

  /**
   * Refuses options that exclude each other.
   *
   * @throws IllegalArgumentException in words for a person
   */
  void check() {
    refuse(out != null && port != null, "--out and --port exclude each other");
    refuse(realTime && atOnce, "--real-time and --at-once exclude each other");
    refuse(
        port != null && Files.isRegularFile(port),
        port + " is a file, not a port: use --out to write a capture file");
  }

  boolean inRealTime() {
    return realTime || (port != null && !atOnce);
  }

  LineSink open(SimulationKind kind, Scenario scenario, Streams streams, HostClock clock)
      throws IOException {
    if (port != null) {
      return BareLines.toPort(port);
    }
    if (out == null || out.equals(STANDARD_OUTPUT)) {
      return BareLines.to(streams.out());
    }
    SimulatedHeader header = new SimulatedHeader(kind, scenario, asset);
    return CaptureLines.to(out, header.at(inRealTime() ? clock.wall() : null));
  }

  private static void refuse(boolean wrong, String why) {
    if (wrong) {
      throw new IllegalArgumentException(why);
    }
  }
}
