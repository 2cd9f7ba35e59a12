package org.thumbseal.page;

import java.net.Inet4Address;
import java.net.InetAddress;
import java.net.NetworkInterface;
import java.net.SocketException;
import java.util.Comparator;
import java.util.List;
import java.util.stream.Stream;

/** What this machine is called by others on its network. */
final class Neighbours {
  private Neighbours() {}

  /** An address that another device may reach this machine by; the loopback one where none. */
  static String own(InetAddress any) {
    try {
      return best(NetworkInterface.networkInterfaces().flatMap(NetworkInterface::inetAddresses));
    } catch (SocketException e) {
      return Door.literal(any);
    }
  }

  /** A private one first (RFC 1918); but many a house gives its computers public ones. */
  static String best(Stream<InetAddress> addresses) {
    List<InetAddress> reachable =
        addresses
            .filter(Inet4Address.class::isInstance)
            .filter(
                a -> !a.isLoopbackAddress() && !a.isLinkLocalAddress() && !a.isAnyLocalAddress())
            .sorted(Comparator.comparing(a -> !a.isSiteLocalAddress()))
            .toList();
    return reachable.isEmpty() ? "127.0.0.1" : Door.literal(reachable.get(0));
  }
}
