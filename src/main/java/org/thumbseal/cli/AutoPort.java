package org.thumbseal.cli;

import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.function.Consumer;
import org.thumbseal.daemon.OpenedLink;
import org.thumbseal.link.HostClock;
import org.thumbseal.link.Link;
import org.thumbseal.link.LinkAddress;
import org.thumbseal.link.LinkUnavailable;
import org.thumbseal.link.LinkUnavailable.Reason;
import org.thumbseal.link.Links;
import org.thumbseal.link.PortAnswer;
import org.thumbseal.link.PortProbe;
import org.thumbseal.link.SensorSearch;
import org.thumbseal.link.SensorSearch.Looked;
import org.thumbseal.link.SerialPorts;

/** {@code --port auto}: the ports on which a sensor says who it is. */
final class AutoPort {
  static final String NAME = "auto";
  private static final Duration PAUSE = Duration.ofSeconds(2);

  private final SensorSearch search;
  private final HostClock clock;
  private final Consumer<String> notices;
  private String said = "";

  /**
   * Takes what it needs.
   *
   * @param clock lets time pass between two looks
   * @param notices is told what was found and what not, one line each
   */
  AutoPort(SensorSearch search, HostClock clock, Consumer<String> notices) {
    this.search = search;
    this.clock = clock;
    this.notices = notices;
  }

  /** Links to these addresses, {@code auto} among them standing for all sensors found. */
  static List<Link> links(
      List<LinkAddress> addresses, Links links, boolean waiting, Consumer<String> notices) {
    List<Link> all = new ArrayList<>();
    for (LinkAddress address : addresses) {
      if (address instanceof LinkAddress.Serial serial && isMeant(address)) {
        HostClock clock = HostClock.system();
        PortProbe probe = new PortProbe(clock, PortProbe.AFTER_A_START);
        SensorSearch search = new SensorSearch(SerialPorts.system(), probe, serial.settings());
        all.addAll(new AutoPort(search, clock, notices).find(waiting));
      } else {
        all.add(links.to(address));
      }
    }
    return all;
  }

  static boolean isMeant(LinkAddress address) {
    return address instanceof LinkAddress.Serial serial && serial.port().equals(NAME);
  }

  /**
   * All sensors there are, open already: a board may start anew each time its port is opened.
   *
   * @param waiting whether to look until there is one
   * @throws Failure if there is none, and it is not waited for
   */
  List<Link> find(boolean waiting) {
    List<Link> found = lookOnce(waiting);
    while (found.isEmpty()) {
      if (!waiting) {
        throw Failure.machine(
            "no sensor found; plug one in, name its port (--port), or wait for it (--wait)");
      }
      clock.pause(PAUSE);
      found = lookOnce(true);
    }
    return found;
  }

  private List<Link> lookOnce(boolean waiting) {
    try {
      List<Looked> all = search.look();
      say(all, waiting);
      return sensors(all);
    } catch (LinkUnavailable e) {
      if (!waiting || e.reason() == Reason.NO_LIBRARY) {
        throw Failure.machine(String.valueOf(e.getMessage()));
      }
      say(e.getMessage() + "; looking again");
      return List.of();
    }
  }

  private static List<Link> sensors(List<Looked> all) {
    List<Link> sensors = new ArrayList<>();
    for (Looked one : all) {
      one.connection().ifPresent(open -> sensors.add(OpenedLink.of(one.link(), open)));
    }
    return sensors;
  }

  private void say(List<Looked> all, boolean waiting) {
    List<String> lines = new ArrayList<>();
    for (Looked one : all) {
      lines.add(one.link().name() + ": " + AnswerText.of(one.answer()));
    }
    if (all.isEmpty()) {
      lines.add("no serial port on USB");
    }
    boolean none = all.stream().noneMatch(one -> one.answer() instanceof PortAnswer.Sensor);
    if (none && waiting) {
      lines.add("no sensor found yet; looking again until there is one");
    }
    say(String.join("\n", lines));
  }

  /** What has not changed since the last look is not said again. */
  private void say(String text) {
    if (!text.equals(said)) {
      said = text;
      text.lines().forEach(line -> notices.accept(NAME + ": " + line));
    }
  }
}
