package org.thumbseal.cli;

import java.io.IOException;
import java.io.OutputStream;
import java.net.InetAddress;
import java.net.ServerSocket;
import java.net.Socket;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.time.Duration;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalLong;
import java.util.concurrent.atomic.AtomicLongArray;
import org.thumbseal.link.HostClock;
import org.thumbseal.link.PtyPair;
import org.thumbseal.simulate.Scenario;
import org.thumbseal.simulate.Script;
import org.thumbseal.simulate.TestTruth;
import org.thumbseal.simulate.TimedLine;

/**
 * A sensor in real time on a pump that is tested every nine seconds, whether anybody listens or
 * not, with a note of when each line went out. Over TCP, or over a pseudo-terminal.
 */
final class KillFeed implements AutoCloseable {
  private static final int TESTS = 200;
  private static final long NOT_SENT = 0;
  private static final OutputStream NOBODY = OutputStream.nullOutputStream();

  private final List<TimedLine> lines = new ArrayList<>();
  private final Map<String, Integer> numbers = new HashMap<>();
  private final AtomicLongArray sentNanos;
  private final List<TestTruth> truth;
  private final ServerSocket server;
  private final Path folder;
  private final boolean pty;
  private final long beganNanos;
  private volatile OutputStream listener = NOBODY;
  private volatile boolean closed;
  private volatile double now;
  private Optional<PtyPair> pair = Optional.empty();

  private KillFeed(Path folder, boolean pty) throws IOException {
    this.folder = folder;
    this.pty = pty;
    Scenario scenario = QuickPump.scenario().with(script());
    scenario.lines().forEachRemaining(this::add);
    truth = scenario.truth();
    sentNanos = new AtomicLongArray(lines.size());
    server = new ServerSocket(0, 1, InetAddress.getLoopbackAddress());
    beganNanos = System.nanoTime();
    start(this::send, "feed");
    start(this::accept, "accept");
  }

  /** Begins now. */
  static KillFeed start(Path folder, boolean pty) throws IOException {
    return new KillFeed(folder, pty);
  }

  private static void start(Runnable work, String name) {
    Thread thread = new Thread(work, name);
    thread.setDaemon(true);
    thread.start();
  }

  private static Script script() {
    Script script = Script.quiet(2).pumpOn(3);
    for (int i = 0; i < TESTS; i++) {
      script = script.block(5).release(4);
    }
    return script;
  }

  private void add(TimedLine line) {
    numbers.put(line.line(), lines.size());
    lines.add(line);
  }

  /** The address for one life of a program. */
  String plugIn() throws IOException {
    if (!pty) {
      return "tcp:127.0.0.1:" + server.getLocalPort();
    }
    PtyPair opened = PtyPair.in(folder);
    pair = Optional.of(opened);
    return opened.port();
  }

  /** The program has the port open. */
  void opened() {
    if (pty) {
      listener = new PtyEnd();
    }
  }

  /** The program is dead. */
  void unplug() throws IOException {
    listener = NOBODY;
    if (pty) {
      pair.orElseThrow().unplug();
    }
  }

  boolean isPty() {
    return pty;
  }

  private final class PtyEnd extends OutputStream {
    @Override
    public void write(int octet) throws IOException {
      pair.orElseThrow().send(new byte[] {(byte) octet});
    }

    @Override
    public void write(byte[] bytes) throws IOException {
      pair.orElseThrow().send(bytes);
    }
  }

  private void accept() {
    while (!closed) {
      try {
        Socket socket = server.accept();
        socket.setTcpNoDelay(true);
        listener = socket.getOutputStream();
      } catch (IOException e) {
        // Closed, or the other end has gone again already.
      }
    }
  }

  private void send() {
    HostClock clock = HostClock.system();
    for (int i = 0; i < lines.size() && !closed; i++) {
      long due = beganNanos + lines.get(i).hostMicros() * 1_000;
      clock.pause(Duration.ofNanos(Math.max(0, due - System.nanoTime())));
      now = lines.get(i).hostMicros() / 1e6;
      OutputStream to = listener;
      try {
        to.write((lines.get(i).line() + "\n").getBytes(StandardCharsets.ISO_8859_1));
        sentNanos.set(i, to.equals(NOBODY) ? NOT_SENT : System.nanoTime());
      } catch (IOException e) {
        listener = NOBODY;
      }
    }
  }

  /** The tests, times in seconds on the clock of the sensor, which is that of the feed. */
  List<TestTruth> truth() {
    return truth;
  }

  /** How far the feed is, s; it lags behind where the machine is busy. */
  double now() {
    return now;
  }

  /** When somebody was sent what was due at this second of the feed; empty when nobody was. */
  OptionalLong sentAt(double seconds) {
    int number = 0;
    while (number < lines.size() - 1 && lines.get(number).hostMicros() < seconds * 1e6) {
      number++;
    }
    long nanos = sentNanos.get(number);
    return nanos == NOT_SENT ? OptionalLong.empty() : OptionalLong.of(nanos);
  }

  /**
   * For how long before a moment the lines are missing that went out after this one, s; 0 when none
   * is.
   */
  double missing(String line, long nanos) {
    Integer number = numbers.get(line);
    if (number == null) {
      throw new AssertionError("not a line that was sent: " + line);
    }
    long next = number + 1 < lines.size() ? sentNanos.get(number + 1) : NOT_SENT;
    return next == NOT_SENT ? 0 : Math.max(0, (nanos - next) / 1e9);
  }

  @Override
  public void close() throws IOException {
    closed = true;
    server.close();
    if (pair.isPresent()) {
      pair.get().unplug();
    }
  }
}
