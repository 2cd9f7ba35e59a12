package org.thumbseal.cli;

import java.io.InputStream;
import java.util.ArrayList;
import java.util.List;
import org.thumbseal.daemon.BenchListener;
import org.thumbseal.daemon.Daemon;
import org.thumbseal.daemon.Limits;
import org.thumbseal.daemon.PortSupervisor;
import org.thumbseal.daemon.ResultStore;
import org.thumbseal.daemon.Surroundings;
import org.thumbseal.daemon.TestRecorder;
import org.thumbseal.link.HostClock;
import org.thumbseal.link.LinkAddress;
import org.thumbseal.link.LinkUnavailable;
import org.thumbseal.link.Links;
import org.thumbseal.pipeline.GradingSettings;

/** Ports, recorders and the daemon over them, put together; stops in order when told to. */
final class Bench {
  private final List<TestRecorder> recorders = new ArrayList<>();
  private final BenchListener listener;
  private final Daemon daemon;

  /** What a bench is made of. */
  record Parts(
      ResultStore store, BenchListener listener, GradingSettings settings, InputStream in) {}

  Bench(List<LinkAddress> addresses, Parts parts, boolean waiting) {
    listener = parts.listener();
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
    int unsaved = recorders.stream().mapToInt(TestRecorder::unsaved).sum();
    if (unsaved > 0) {
      listener.notice("results that could not be written, and are lost now: " + unsaved);
      return ExitCode.MACHINE;
    }
    return daemon.ports().stream().mapToInt(Bench::exitCode).max().orElse(ExitCode.GOOD);
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
