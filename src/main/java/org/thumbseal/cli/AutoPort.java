package org.thumbseal.cli;

import java.util.ArrayList;
import java.util.List;
import java.util.function.Consumer;
import org.thumbseal.daemon.OpenedLink;
import org.thumbseal.link.AwaitedSensor;
import org.thumbseal.link.HostClock;
import org.thumbseal.link.Link;
import org.thumbseal.link.LinkAddress;
import org.thumbseal.link.LinkUnavailable;
import org.thumbseal.link.LinkUnavailable.Reason;
import org.thumbseal.link.Links;
import org.thumbseal.link.PortProbe;
import org.thumbseal.link.SensorSearch;
import org.thumbseal.link.SensorSearch.Looked;
import org.thumbseal.link.SerialPorts;

/** {@code --port auto}: the ports on which a sensor says who it is. */
final class AutoPort {
  static final String NAME = "auto";

  private final LinkAddress.Serial address;
  private final SensorSearch search;
  private final Consumer<String> notices;

  /**
   * Takes what it needs.
   *
   * @param address how ports are opened
   * @param notices is told what was found and what not, one line each
   */
  AutoPort(LinkAddress.Serial address, SensorSearch search, Consumer<String> notices) {
    this.address = address;
    this.search = search;
    this.notices = notices;
  }

  /** Links to these addresses, {@code auto} among them standing for all sensors found. */
  static List<Link> links(
      List<LinkAddress> addresses, Links links, boolean waiting, Consumer<String> notices) {
    List<Link> all = new ArrayList<>();
    for (LinkAddress address : addresses) {
      if (address instanceof LinkAddress.Serial serial && isMeant(address)) {
        PortProbe probe = new PortProbe(HostClock.system(), PortProbe.AFTER_A_START);
        SensorSearch search = new SensorSearch(SerialPorts.system(), probe, serial.settings());
        all.addAll(new AutoPort(serial, search, notices).find(waiting));
      } else {
        all.add(links.to(address));
      }
    }
    return all;
  }

  /**
   * The link to an address, {@code auto} standing for the only sensor there is.
   *
   * @throws Failure if there is none or more than one
   */
  static Link one(LinkAddress address, Links links, Consumer<String> notices) {
    List<Link> found = links(List.of(address), links, false, notices);
    if (found.size() > 1) {
      found.stream()
          .filter(OpenedLink.class::isInstance)
          .forEach(link -> ((OpenedLink) link).close());
      throw Failure.usage("--port auto found more than one sensor; name the port of one");
    }
    return found.get(0);
  }

  static boolean isMeant(LinkAddress address) {
    return address instanceof LinkAddress.Serial serial && serial.port().equals(NAME);
  }

  /**
   * All sensors there are, open already: a board may start anew each time its port is opened.
   *
   * @param waiting whether the first to come is waited for if there is none
   * @throws Failure if there is none, and it is not waited for
   */
  List<Link> find(boolean waiting) {
    List<Link> found = look(waiting);
    if (found.isEmpty() && waiting) {
      return List.of(new AwaitedSensor(address, search));
    }
    if (found.isEmpty()) {
      throw Failure.machine(
          "no sensor found; plug one in, name its port (--port), or wait for it (--wait)");
    }
    return found;
  }

  private List<Link> look(boolean waiting) {
    try {
      List<Looked> all = search.look();
      say(all);
      return sensors(all);
    } catch (LinkUnavailable e) {
      if (!waiting || e.reason() == Reason.NO_LIBRARY) {
        throw Failure.machine(String.valueOf(e.getMessage()));
      }
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

  private void say(List<Looked> all) {
    for (Looked one : all) {
      notices.accept(NAME + ": " + one.link().name() + ": " + AnswerText.of(one.answer()));
    }
    if (all.isEmpty()) {
      notices.accept(NAME + ": no serial port on USB");
    }
  }
}
