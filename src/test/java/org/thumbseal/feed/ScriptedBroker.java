package org.thumbseal.feed;

import java.io.IOException;
import java.io.InputStream;
import java.io.OutputStream;
import java.net.InetAddress;
import java.net.ServerSocket;
import java.net.Socket;
import java.util.HexFormat;
import java.util.List;

/** Answers each thing that it is told by the next bytes of a list, and then says nothing more. */
final class ScriptedBroker implements AutoCloseable {
  private static final int MUCH = 1 << 16;

  private final ServerSocket socket;
  private final List<String> answers;

  private ScriptedBroker(ServerSocket socket, List<String> answers) {
    this.socket = socket;
    this.answers = answers;
  }

  /** Begins; answers are in hexadecimal, an empty one ends the connection. */
  static ScriptedBroker answering(List<String> answers) throws IOException {
    ScriptedBroker broker =
        new ScriptedBroker(new ServerSocket(0, 1, InetAddress.getLoopbackAddress()), answers);
    Thread thread = new Thread(broker::serve, "scripted-broker");
    thread.setDaemon(true);
    thread.start();
    return broker;
  }

  String address() {
    return "mqtt://127.0.0.1:" + socket.getLocalPort();
  }

  private void serve() {
    try (Socket peer = socket.accept()) {
      InputStream in = peer.getInputStream();
      for (String answer : answers) {
        if (in.read(new byte[MUCH]) < 0 || answer.isEmpty()) {
          return;
        }
        peer.getOutputStream().write(HexFormat.of().parseHex(answer.replace(" ", "")));
      }
      in.transferTo(OutputStream.nullOutputStream());
    } catch (IOException e) {
      // The other side has gone.
    }
  }

  @Override
  public void close() throws IOException {
    socket.close();
  }
}
