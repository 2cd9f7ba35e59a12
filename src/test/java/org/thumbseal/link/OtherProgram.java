package org.thumbseal.link;

import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStreamReader;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;

/** A program of its own that opens a serial port and keeps it until it is ended. */
public final class OtherProgram {
  private OtherProgram() {}

  /** Starts it, and returns when it holds the port. */
  public static Process holding(String port) throws IOException {
    String java = Path.of(System.getProperty("java.home"), "bin", "java").toString();
    String classes = System.getProperty("java.class.path");
    Process process =
        new ProcessBuilder(java, "-cp", classes, OtherProgram.class.getName(), port)
            .redirectErrorStream(true)
            .start();
    BufferedReader said =
        new BufferedReader(new InputStreamReader(process.getInputStream(), StandardCharsets.UTF_8));
    String line = said.readLine();
    if (!"open".equals(line)) {
      throw new IOException("the other program could not open the port: " + line);
    }
    return process;
  }

  /** Opens the port given as the only argument. */
  public static void main(String[] args) throws Exception {
    var address = new LinkAddress.Serial(args[0], args[0], SerialSettings.STANDARD);
    LinkConnection connection = new SerialLink(address, SerialPorts.system()).open();
    System.out.println("open");
    for (int count = 0; count >= 0; ) {
      count = connection.read(new byte[64]);
    }
  }
}
