package org.thumbseal.link;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.IOException;
import java.net.InetAddress;
import java.net.ServerSocket;
import java.net.Socket;
import org.junit.jupiter.api.Test;
import org.thumbseal.link.LinkUnavailable.Reason;

class TcpLinkTest extends LiveLinkContract {

  private static Link link(String host, int port) {
    return new TcpLink(new LinkAddress.Tcp("tcp:" + host + ":" + port, host, port));
  }

  /** A serial server with one client. */
  private static final class Server implements FarEnd {
    private final ServerSocket listening;
    private Socket client = new Socket();

    Server() throws IOException {
      listening = new ServerSocket(0, 5, InetAddress.getLoopbackAddress());
    }

    @Override
    public Link link() {
      return TcpLinkTest.link(
          InetAddress.getLoopbackAddress().getHostAddress(), listening.getLocalPort());
    }

    @Override
    public void send(byte[] bytes) throws IOException {
      if (!client.isConnected()) {
        client = listening.accept();
      }
      client.getOutputStream().write(bytes);
    }

    @Override
    public void end() throws IOException {
      client.close();
    }

    @Override
    public void close() throws IOException {
      client.close();
      listening.close();
    }
  }

  @Override
  FarEnd farEnd() throws IOException {
    return new Server();
  }

  @Test
  void aRefusedConnectionIsOneLineWithARemedy() throws IOException {
    int free;
    try (ServerSocket socket = new ServerSocket(0, 1, InetAddress.getLoopbackAddress())) {
      free = socket.getLocalPort();
    }
    String host = InetAddress.getLoopbackAddress().getHostAddress();
    assertThatThrownBy(() -> link(host, free).open())
        .isInstanceOfSatisfying(
            LinkUnavailable.class, e -> assertThat(e.reason()).isEqualTo(Reason.UNREACHABLE))
        .hasMessageContaining("is the port number right?")
        .hasMessageNotContaining("\n");
  }

  @Test
  void aHostWithoutAddressIsSaidSo() {
    // RFC 6761 section 6.4: the domain "invalid" never resolves.
    assertThatThrownBy(() -> link("sensor.invalid", 4001).open())
        .isInstanceOf(LinkUnavailable.class)
        .hasMessageStartingWith("no host of this name");
  }
}
