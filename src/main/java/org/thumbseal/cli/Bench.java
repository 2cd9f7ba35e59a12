package org.thumbseal.cli;

import java.io.InputStream;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.function.Supplier;
import org.thumbseal.archive.Archive;
import org.thumbseal.archive.ArchiveException;
import org.thumbseal.daemon.BenchListener;
import org.thumbseal.daemon.Daemon;
import org.thumbseal.daemon.InterruptedCaptures;
import org.thumbseal.daemon.Limits;
import org.thumbseal.daemon.LinkWatcher;
import org.thumbseal.daemon.PortDesk;
import org.thumbseal.daemon.PortState;
import org.thumbseal.daemon.PortSupervisor;
import org.thumbseal.daemon.ResultStore;
import org.thumbseal.daemon.Surroundings;
import org.thumbseal.daemon.TestRecorder;
import org.thumbseal.daemon.Ticker;
import org.thumbseal.guided.Sealing;
import org.thumbseal.link.HostClock;
import org.thumbseal.link.Link;
import org.thumbseal.link.LinkUnavailable;
import org.thumbseal.link.Links;
import org.thumbseal.pipeline.GradingSettings;

/** Ports, recorders and the daemon over them, put together; stops in order when told to. */
final class Bench {
  private final HostClock clock = HostClock.system();
  private final Parts parts;
  private final ResultStore store;
  private final Map<String, PortDesk> desks = new LinkedHashMap<>();
  private final Daemon daemon;

  /** What a bench is made of. */
  record Parts(Archive archive, BenchListener listener, GradingSettings settings) {}

  Bench(List<Link> links, Parts parts, boolean waiting) {
    this.parts = parts;
    this.store = new ResultStore(parts.archive(), clock, parts.listener());
    Limits standard = Limits.STANDARD;
    Surroundings surroundings =
        new Surroundings(
            clock,
            watcher(parts.listener()),
            new Limits(standard.backOff(), standard.silence(), standard.queueLines(), waiting),
            parts.settings().sensor().lineFormat());
    List<PortSupervisor> ports = new ArrayList<>();
    for (Link link : links) {
      TestRecorder recorder = recorder(link);
      desks.put(link.name(), recorder);
      ports.add(new PortSupervisor(link, recorder, surroundings));
    }
    daemon = new Daemon(ports);
  }

  /** Where ports come from; standard input is one. */
  static Links links(InputStream in) {
    return new Links(new SimulatedPumps(), in, HostClock.system());
  }

  /** Where people speak to the ports, by address. */
  Map<String, PortDesk> desks() {
    return desks;
  }

  /** Where a document goes that was made from no capture, while the ports go on. */
  Sealing sealing() {
    return store::seal;
  }

  /** Says this too, where it says how things are. */
  void healthAlso(Supplier<String> line) {
    store.healthAlso(line);
  }

  private static LinkWatcher watcher(BenchListener listener) {
    return new LinkWatcher() {
      @Override
      public void changed(String text) {
        listener.linkNotice(text);
      }

      @Override
      public void became(String port, PortState state) {
        listener.link(port, state);
      }
    };
  }

  private TestRecorder recorder(Link link) {
    return new TestRecorder(link.name(), parts.settings(), store, parts.listener());
  }

  /**
   * Takes up what an earlier run left, then runs until told to stop, or until every source has
   * ended; the exit code.
   */
  int run() {
    takeUp();
    Ticker ticker = Ticker.start(clock, store::tick);
    try {
      daemon.start();
      daemon.awaitEnd();
    } catch (InterruptedException e) {
      daemon.requestStop();
      Thread.currentThread().interrupt();
    } finally {
      ticker.stop();
    }
    int code = daemon.ports().stream().mapToInt(Bench::exitCode).max().orElse(ExitCode.GOOD);
    return store.finish() ? code : ExitCode.MACHINE;
  }

  private void takeUp() {
    try {
      new InterruptedCaptures(store, parts.settings(), parts.listener()).takeUp();
    } catch (ArchiveException e) {
      throw Failure.machine(String.valueOf(e.getMessage()));
    }
  }

  void requestStop() {
    daemon.requestStop();
  }

  private static int exitCode(PortSupervisor port) {
    return switch (port.outcome()) {
      case RUNNING, INPUT_ENDED, STOPPED -> ExitCode.GOOD;
      case FAULT -> ExitCode.MACHINE;
      case NOT_OPENED ->
          port.refusal().filter(LinkUnavailable::isMistake).isPresent()
              ? ExitCode.USAGE
              : ExitCode.MACHINE;
    };
  }
}
