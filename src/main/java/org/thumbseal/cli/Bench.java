package org.thumbseal.cli;

import java.io.InputStream;
import java.util.ArrayList;
import java.util.List;
import org.thumbseal.daemon.BenchListener;
import org.thumbseal.daemon.Daemon;
import org.thumbseal.daemon.Limits;
import org.thumbseal.daemon.PortOutcome;
import org.thumbseal.daemon.PortSupervisor;
import org.thumbseal.daemon.ResultStore;
import org.thumbseal.daemon.Surroundings;
import org.thumbseal.daemon.TestRecorder;
import org.thumbseal.link.HostClock;
import org.thumbseal.link.LinkAddress;
import org.thumbseal.link.Links;
import org.thumbseal.pipeline.GradingSettings;

/** Ports, recorders and the daemon over them, put together; stops in order when told to. */
final class Bench {
  private final List<TestRecorder> recorders = new ArrayList<>();
  private final Daemon daemon;

  /** What a bench is made of. */
  record Parts(
      ResultStore store, BenchListener listener, GradingSettings settings, InputStream in) {}

  Bench(List<LinkAddress> addresses, Parts parts, boolean waiting) {
    HostClock clock = HostClock.system();
    Links links = new Links(new SimulatedPumps(), parts.in(), clock);
    Limits standard = Limits.STANDARD;
    Surroundings surroundings =
        new Surroundings(
            clock,
            text -> parts.listener().notice(text),
            new Limits(standard.backOff(), standard.silence(), standard.queueLines(), waiting));
    List<PortSupervisor> ports = new ArrayList<>();
    for (LinkAddress address : addresses) {
      TestRecorder recorder =
          new TestRecorder(address.text(), parts.settings(), parts.store(), parts.listener());
      recorders.add(recorder);
      ports.add(new PortSupervisor(links.to(address), recorder, surroundings));
    }
    daemon = new Daemon(ports);
  }

  /** Runs until told to stop, or until every source has ended; the exit code. */
  int run() {
    daemon.start();
    try {
      daemon.awaitEnd();
    } catch (InterruptedException e) {
      daemon.requestStop();
      Thread.currentThread().interrupt();
    }
    return exitCode();
  }

  void requestStop() {
    daemon.requestStop();
  }

  private int exitCode() {
    boolean unsaved = recorders.stream().anyMatch(r -> r.unsaved() > 0);
    boolean failed =
        daemon.ports().stream()
            .map(PortSupervisor::outcome)
            .anyMatch(o -> o == PortOutcome.NOT_OPENED || o == PortOutcome.FAULT);
    return unsaved || failed ? ExitCode.MACHINE : ExitCode.GOOD;
  }
}
