package org.thumbseal.link;

import java.io.InputStream;

/** Makes links from addresses. */
public final class Links {
  private final SimulatedSensor simulator;
  private final InputStream standardInput;
  private final HostClock clock;
  private final SerialPorts ports = SerialPorts.system();

  /**
   * Takes what the process has.
   *
   * @param simulator what {@code sim:} addresses are played by
   * @param standardInput what {@code -} reads
   * @param clock what simulated sensors go by
   */
  public Links(SimulatedSensor simulator, InputStream standardInput, HostClock clock) {
    this.simulator = simulator;
    this.standardInput = standardInput;
    this.clock = clock;
  }

  /** The link of this address; nothing is opened yet. */
  public Link to(LinkAddress address) {
    if (address instanceof LinkAddress.Serial serial) {
      return new SerialLink(serial, ports);
    }
    if (address instanceof LinkAddress.Tcp tcp) {
      return new TcpLink(tcp);
    }
    if (address instanceof LinkAddress.Simulated simulated) {
      return new SimulatedLink(simulated, simulator, clock);
    }
    return address instanceof LinkAddress.RawFile file
        ? new FileLink(file)
        : new StreamLink(address.text(), standardInput);
  }
}
