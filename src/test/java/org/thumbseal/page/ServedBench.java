package org.thumbseal.page;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Iterator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.concurrent.CopyOnWriteArrayList;
import org.thumbseal.archive.Archive;
import org.thumbseal.daemon.BenchListener;
import org.thumbseal.daemon.BenchListeners;
import org.thumbseal.daemon.Daemon;
import org.thumbseal.daemon.Limits;
import org.thumbseal.daemon.LinkWatcher;
import org.thumbseal.daemon.PortDesk;
import org.thumbseal.daemon.PortState;
import org.thumbseal.daemon.PortSupervisor;
import org.thumbseal.daemon.ResultStore;
import org.thumbseal.daemon.Surroundings;
import org.thumbseal.daemon.TestRecorder;
import org.thumbseal.guided.Stations;
import org.thumbseal.link.HostClock;
import org.thumbseal.link.LinkAddress;
import org.thumbseal.link.Links;
import org.thumbseal.link.SimulatedSensor.TimedLine;
import org.thumbseal.phase.PhaseEvent;
import org.thumbseal.pipeline.GradingSettings;
import org.thumbseal.record.ResultDocument;
import org.thumbseal.seal.AccessToken;
import org.thumbseal.seal.SigningKey;
import org.thumbseal.simulate.Simulation;
import org.thumbseal.simulate.SimulationKind;

/** Simulated sensors, the daemon over them, and the page, in this process. */
final class ServedBench implements AutoCloseable {
  private final HostClock clock = HostClock.system();
  private final Daemon daemon;
  private final PageServer page;
  private final Map<String, SpokenDesk> desks = new LinkedHashMap<>();
  final List<ResultDocument> results = new CopyOnWriteArrayList<>();

  ServedBench(Path folder, PageAddress address, Optional<AccessToken> token, String... ports)
      throws Exception {
    LiveBench live = new LiveBench(List.of(ports), GradingSettings.DEFAULT, clock);
    BenchListener listener = new BenchListeners(List.of(live, new Results()));
    Archive archive = Archive.open(folder.resolve("results"), SigningKey.generate());
    ResultStore store = new ResultStore(archive, clock, listener);
    List<PortSupervisor> supervisors = new ArrayList<>();
    for (String port : ports) {
      supervisors.add(
          new PortSupervisor(
              new Links(ServedBench::simulated, System.in, clock).to(LinkAddress.parse(port)),
              new TestRecorder(port, GradingSettings.DEFAULT, store, listener),
              new Surroundings(clock, watcher(listener), Limits.STANDARD)));
      desks.put(port, new SpokenDesk(port, listener));
    }
    daemon = new Daemon(supervisors);
    Map<String, PortDesk> spoken = new LinkedHashMap<>(desks);
    PageServer.Setting kept = new PageServer.Setting("results", store::seal, Stations.USUAL);
    page = PageServer.start(address, new PageServer.Served(live, spoken, clock, kept), token);
  }

  /** On this computer alone, on any port that is free. */
  static ServedBench alone(Path folder, String... ports) throws Exception {
    return new ServedBench(folder, free("127.0.0.1"), Optional.empty(), ports);
  }

  static PageAddress free(String host) {
    return new PageAddress(host, 0, true);
  }

  private static Iterator<TimedLine> simulated(String kind, long seed) {
    var lines = Simulation.of(SimulationKind.ofCode(kind).orElseThrow(), seed).lines();
    return new Iterator<>() {
      @Override
      public boolean hasNext() {
        return lines.hasNext();
      }

      @Override
      public TimedLine next() {
        var line = lines.next();
        return new TimedLine(line.hostMicros(), line.line());
      }
    };
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

  ServedBench start() {
    daemon.start();
    return this;
  }

  SpokenDesk desk(String port) {
    return Objects.requireNonNull(desks.get(port));
  }

  int port() {
    return page.port();
  }

  String url() {
    return page.url();
  }

  @Override
  public void close() {
    page.close();
    try {
      daemon.stop();
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
    }
  }

  /** Keeps what was stored. */
  private final class Results implements BenchListener {
    @Override
    public void phase(String port, PhaseEvent.Entered phase) {}

    @Override
    public void result(String port, ResultDocument result, Path file) {
      results.add(result);
    }

    @Override
    public void waiting(String port, ResultDocument result) {}

    @Override
    public void notice(String text) {}
  }
}
