package org.thumbseal.feed;

import java.io.IOException;
import java.io.InputStream;
import java.io.OutputStream;
import java.net.InetAddress;
import java.net.ServerSocket;
import java.net.Socket;
import java.util.concurrent.atomic.AtomicInteger;

/**
 * Stands between a sender and a broker, and cuts each connection after some answers of the broker;
 * the last of them is swallowed, so that the broker has a message whose sender does not know it.
 */
final class CuttingProxy implements AutoCloseable {
  private final ServerSocket server;
  private final int broker;
  private final int answers;
  private final AtomicInteger cuts = new AtomicInteger();

  private CuttingProxy(ServerSocket server, int broker, int answers) {
    this.server = server;
    this.broker = broker;
    this.answers = answers;
  }

  static CuttingProxy to(int broker, int answers) throws IOException {
    ServerSocket server = new ServerSocket(0, 10, InetAddress.getLoopbackAddress());
    CuttingProxy proxy = new CuttingProxy(server, broker, answers);
    start(proxy::accept);
    return proxy;
  }

  private static void start(Runnable work) {
    Thread thread = new Thread(work, "proxy");
    thread.setDaemon(true);
    thread.start();
  }

  int port() {
    return server.getLocalPort();
  }

  int cuts() {
    return cuts.get();
  }

  private void accept() {
    while (!server.isClosed()) {
      try {
        Socket sender = server.accept();
        Socket to = new Socket(InetAddress.getLoopbackAddress(), broker);
        start(() -> pump(sender, to, Integer.MAX_VALUE));
        start(() -> pump(to, sender, answers));
      } catch (IOException e) {
        // Closed.
      }
    }
  }

  /** A broker answers one message with one packet, which arrives in one piece on loopback. */
  private void pump(Socket from, Socket to, int pieces) {
    try (from;
        to;
        InputStream in = from.getInputStream();
        OutputStream out = to.getOutputStream()) {
      byte[] buffer = new byte[65_536];
      for (int i = 0; i < pieces; i++) {
        int length = in.read(buffer);
        if (length < 0) {
          return;
        }
        out.write(buffer, 0, length);
        out.flush();
      }
      if (in.read(buffer) > 0) {
        cuts.incrementAndGet();
      }
    } catch (IOException e) {
      // Cut from the other end.
    }
  }

  @Override
  public void close() throws IOException {
    server.close();
  }
}
