package org.thumbseal.daemon;

import java.util.List;

/** Looks after several ports at once; what befalls one does not touch the others. */
public final class Daemon {
  private final List<PortSupervisor> ports;

  /** Takes charge of ports that are not started yet. */
  public Daemon(List<PortSupervisor> ports) {
    this.ports = List.copyOf(ports);
  }

  /** Starts all. */
  public void start() {
    ports.forEach(PortSupervisor::start);
  }

  /** Waits until no port is looked after any more: all finite, or all told to stop. */
  public void awaitEnd() throws InterruptedException {
    for (PortSupervisor port : ports) {
      port.awaitEnd();
    }
  }

  /** Asks all to stop and returns at once. */
  public void requestStop() {
    ports.forEach(PortSupervisor::requestStop);
  }

  /** Stops all, and returns when every handler is through with what it was given. */
  public void stop() throws InterruptedException {
    requestStop();
    awaitEnd();
  }

  /** The ports, in the order given. */
  public List<PortSupervisor> ports() {
    return ports;
  }
}
