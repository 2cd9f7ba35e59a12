package org.thumbseal.link;

import java.io.IOException;
import java.io.InputStream;
import java.net.Socket;
import java.net.SocketTimeoutException;

/** Reads from a socket whose read time-out is set. */
final class TcpConnection implements LinkConnection {
  private final Socket socket;
  private final InputStream in;

  TcpConnection(Socket socket, InputStream in) {
    this.socket = socket;
    this.in = in;
  }

  @Override
  public int read(byte[] buffer) {
    try {
      return in.read(buffer);
    } catch (SocketTimeoutException e) {
      return 0;
    } catch (IOException e) {
      return LOST;
    }
  }

  @Override
  public void close() {
    Closing.quietly(socket);
  }
}
