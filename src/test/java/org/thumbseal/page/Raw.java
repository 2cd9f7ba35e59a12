package org.thumbseal.page;

import java.io.IOException;
import java.io.InputStream;
import java.net.InetAddress;
import java.net.Socket;
import java.nio.charset.StandardCharsets;

/** Requests as bytes, so that nothing of a well-behaved client mends them. */
final class Raw {
  private Raw() {}

  static Socket socket(int port) throws IOException {
    Socket socket = new Socket(InetAddress.getLoopbackAddress(), port);
    socket.setSoTimeout(30_000);
    return socket;
  }

  /** Sends lines, an empty one and a body; gives all that comes until the end. */
  static String ask(int port, String head, String body) throws IOException {
    try (Socket socket = socket(port)) {
      String text = head.replace("\n", "\r\n") + "\r\nConnection: close\r\n\r\n" + body;
      socket.getOutputStream().write(text.getBytes(StandardCharsets.UTF_8));
      return new String(socket.getInputStream().readAllBytes(), StandardCharsets.UTF_8);
    }
  }

  static String get(int port, String path, String... headers) throws IOException {
    return ask(port, "GET " + path + " HTTP/1.1\nHost: " + host(port) + lines(headers), "");
  }

  static String post(int port, String path, String body, String... headers) throws IOException {
    String head = "POST " + path + " HTTP/1.1\nHost: " + host(port);
    String kind = "\nContent-Type: application/json\nContent-Length: " + body.length();
    return ask(port, head + kind + lines(headers), body);
  }

  private static String lines(String... headers) {
    return headers.length == 0 ? "" : "\n" + String.join("\n", headers);
  }

  static String host(int port) {
    return "127.0.0.1:" + port;
  }

  static String own(int port) {
    return "Origin: http://" + host(port);
  }

  /** The first line of an answer, though the connection may break right after it. */
  static String firstLine(Socket socket) throws IOException {
    InputStream in = socket.getInputStream();
    StringBuilder line = new StringBuilder();
    for (int b = in.read(); b >= 0 && b != '\r'; b = in.read()) {
      line.append((char) b);
    }
    return line.toString();
  }
}
