package org.thumbseal.page;

import java.net.InetAddress;
import java.net.NetworkInterface;
import java.net.SocketException;

/** What this machine is called by others on its network. */
final class Neighbours {
  private Neighbours() {}

  /** An address that another device may reach this machine by; the loopback one where none. */
  static String own(InetAddress any) {
    try {
      return NetworkInterface.networkInterfaces()
          .flatMap(NetworkInterface::inetAddresses)
          .filter(a -> a.isSiteLocalAddress() && a.getAddress().length == 4)
          .map(Door::literal)
          .findFirst()
          .orElse("127.0.0.1");
    } catch (SocketException e) {
      return Door.literal(any);
    }
  }
}
