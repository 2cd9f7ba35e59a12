package org.thumbseal.link;

/** A simulated sensor that sends in real time, or a given number of times faster. */
record SimulatedLink(LinkAddress.Simulated address, SimulatedSensor sensor, HostClock clock)
    implements Link {
  @Override
  public String name() {
    return address.text();
  }

  @Override
  public boolean finite() {
    return true;
  }

  @Override
  public LinkConnection open() throws LinkUnavailable {
    var lines = sensor.lines(address.kind(), address.seed());
    return new SimulatedConnection(lines, clock, address.speed());
  }
}
