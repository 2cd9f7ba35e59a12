package org.thumbseal.page;

import java.net.InetAddress;
import java.net.InetSocketAddress;
import java.net.UnknownHostException;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * Where the page is served.
 *
 * @param host name or address as it was given, without brackets
 * @param port 1 to 65535
 * @param elsewhere whether another port does, where this one is taken
 */
public record PageAddress(String host, int port, boolean elsewhere) {
  /** On this computer alone, and on another port where 8650 is taken. */
  public static final PageAddress STANDARD = new PageAddress("127.0.0.1", 8650, true);

  private static final int LARGEST = 65_535;
  private static final Pattern SHAPE =
      Pattern.compile("(?:(\\[[^\\]]+\\]|[^:\\[\\]]+):)?(\\d{1,5})");

  /**
   * Reads {@code PORT} or {@code HOST:PORT}; the host of a bare port is 127.0.0.1.
   *
   * @throws IllegalArgumentException if it is neither; the message says what to write
   */
  public static PageAddress parse(String text) {
    Matcher matcher = SHAPE.matcher(text);
    int port = matcher.matches() ? Integer.parseInt(matcher.group(2)) : 0;
    if (port < 1 || port > LARGEST) {
      throw new IllegalArgumentException(
          "'" + text + "' is no address for the page; write PORT, HOST:PORT or off");
    }
    String host = matcher.group(1) == null ? STANDARD.host() : matcher.group(1);
    return new PageAddress(host.replaceAll("[\\[\\]]", ""), port, false);
  }

  /** The address to listen at. */
  InetSocketAddress socket() throws UnknownHostException {
    return new InetSocketAddress(InetAddress.getByName(host), port);
  }
}
