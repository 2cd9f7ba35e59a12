package org.thumbseal.link;

import java.nio.file.Path;

/** Where bytes come from, as a user writes it. */
public sealed interface LinkAddress {

  /** The text it was read from. */
  String text();

  /**
   * A serial port.
   *
   * @param port its name ({@code COM3}, {@code ttyUSB0}) or path
   */
  record Serial(String text, String port, SerialSettings settings) implements LinkAddress {}

  /**
   * A serial server or a sensor with its own network.
   *
   * @param host name or address, an IPv6 one without brackets
   * @param port 1 to 65535
   */
  record Tcp(String text, String host, int port) implements LinkAddress {}

  /**
   * A simulated sensor in this process.
   *
   * @param kind what it simulates; the simulator knows the names
   * @param seed of its noise
   * @param speed times as fast as life, 0.1 to 100
   */
  record Simulated(String text, String kind, long seed, double speed) implements LinkAddress {}

  /** A file of the very bytes that came over a wire. */
  record RawFile(String text, Path path) implements LinkAddress {}

  /** Standard input. */
  record StandardInput(String text) implements LinkAddress {}

  /**
   * Reads {@code PORT[?baud=N&board=NAME&dtr=leave|assert|clear&settle=MS]}, {@code tcp:HOST:PORT},
   * {@code sim:KIND[,seed=N][,speed=N]}, {@code file:PATH} or {@code -}.
   *
   * @throws LinkAddressException if it is none of them
   */
  static LinkAddress parse(String text) throws LinkAddressException {
    return AddressParser.parse(text);
  }
}
