package org.thumbseal.link;

import java.io.IOException;
import java.net.InetSocketAddress;
import java.net.Socket;
import java.net.SocketTimeoutException;
import java.time.Duration;
import org.thumbseal.link.LinkUnavailable.Reason;

/** A serial server, or a sensor with its own network. The name is looked up at every opening. */
record TcpLink(LinkAddress.Tcp address) implements Link {
  private static final int CONNECT_MILLIS = 3_000;
  private static final int READ_MILLIS = 250;

  /** Over a weak radio what was lost on the way comes again seconds later. */
  private static final Duration STALL = Duration.ofSeconds(5);

  @Override
  public String name() {
    return address.text();
  }

  @Override
  public boolean finite() {
    return false;
  }

  @Override
  public Duration stall() {
    return STALL;
  }

  @Override
  public LinkConnection open() throws LinkUnavailable {
    InetSocketAddress target = new InetSocketAddress(address.host(), address.port());
    if (target.isUnresolved()) {
      throw new LinkUnavailable(
          Reason.UNREACHABLE, "no host of this name; check the name and the network");
    }
    return connect(target);
  }

  private LinkConnection connect(InetSocketAddress target) throws LinkUnavailable {
    Socket socket = new Socket();
    try {
      socket.connect(target, CONNECT_MILLIS);
      socket.setSoTimeout(READ_MILLIS);
      return new TcpConnection(socket, socket.getInputStream());
    } catch (SocketTimeoutException e) {
      throw failed(socket, "no answer; is it switched on and on the same network?");
    } catch (IOException e) {
      String system = String.valueOf(e.getMessage());
      throw failed(socket, system + "; is it switched on, and is the port number right?");
    }
  }

  private static LinkUnavailable failed(Socket socket, String message) {
    Closing.quietly(socket);
    return new LinkUnavailable(Reason.UNREACHABLE, message);
  }
}
