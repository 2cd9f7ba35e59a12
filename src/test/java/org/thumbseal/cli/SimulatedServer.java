package org.thumbseal.cli;

import static java.nio.charset.StandardCharsets.ISO_8859_1;

import java.io.BufferedOutputStream;
import java.io.IOException;
import java.io.OutputStream;
import java.net.InetAddress;
import java.net.ServerSocket;
import java.net.Socket;
import java.time.Duration;
import java.util.Iterator;
import java.util.List;
import java.util.OptionalDouble;
import org.thumbseal.link.HostClock;
import org.thumbseal.simulate.Conditions;
import org.thumbseal.simulate.Simulation;
import org.thumbseal.simulate.SimulationKind;
import org.thumbseal.simulate.TimedLine;

/** A simulated sensor with a network of its own: one test after another, in real time. */
final class SimulatedServer {
  private static final List<SimulationKind> KINDS =
      List.of(
          SimulationKind.SOUND, SimulationKind.SLOW, SimulationKind.LEAK, SimulationKind.WORN_PUMP);

  private static final int SHORTEST_TEST_SECONDS = 10;
  private static final Duration BATCH = Duration.ofMillis(20);
  private static final byte[] END = {'\n'};

  private final ServerSocket server;
  private final Iterator<TimedLine> lines;
  private final Thread thread = new Thread(this::serve, "simulated sensor");
  private volatile boolean stopped;
  private long sent;

  private SimulatedServer(ServerSocket server, Iterator<TimedLine> lines) {
    this.server = server;
    this.lines = lines;
  }

  /** Listens, and speaks for so many minutes to the first who calls. */
  static SimulatedServer start(int seed, double hertz, int minutes) throws IOException {
    OptionalDouble drawn = OptionalDouble.empty();
    Conditions conditions = new Conditions(drawn, drawn, OptionalDouble.of(hertz), drawn);
    SimulationKind kind = KINDS.get(seed % KINDS.size());
    int tests = (minutes + 1) * 60 / SHORTEST_TEST_SECONDS;
    var scenario = Simulation.of(kind, seed, conditions, tests);
    var socket = new ServerSocket(0, 1, InetAddress.getLoopbackAddress());
    SimulatedServer sensor = new SimulatedServer(socket, scenario.lines());
    sensor.thread.setDaemon(true);
    sensor.thread.start();
    return sensor;
  }

  String address() {
    return "tcp:" + server.getInetAddress().getHostAddress() + ":" + server.getLocalPort();
  }

  /** Speaks no more, but stays connected; how many lines it sent. */
  long stop() throws InterruptedException {
    stopped = true;
    thread.join();
    return sent;
  }

  private void serve() {
    try {
      Socket host = server.accept();
      send(new BufferedOutputStream(host.getOutputStream()));
    } catch (IOException e) {
      // The host has hung up: what it did not take is missing in the figures.
    }
  }

  private void send(OutputStream out) throws IOException {
    HostClock clock = HostClock.system();
    Pace pace = new Pace(clock, true);
    while (!stopped && lines.hasNext()) {
      TimedLine line = lines.next();
      while (pace.holdsBack(line) && !stopped) {
        out.flush();
        clock.pause(BATCH);
      }
      out.write(line.line().getBytes(ISO_8859_1));
      out.write(END);
      sent++;
    }
    out.flush();
  }
}
