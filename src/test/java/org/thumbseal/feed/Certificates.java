package org.thumbseal.feed;

import static org.junit.jupiter.api.Assumptions.assumeTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;

/** An authority made by openssl, and what it signs. */
record Certificates(Path folder) {
  static final String PASSWORD = "only-for-tests";

  /** An authority, and a certificate by it for a host on loopback. */
  static Certificates make(Path folder, String host) throws Exception {
    Certificates made = new Certificates(Files.createDirectories(folder));
    made.openssl(
        "req -x509 -newkey rsa:2048 -nodes -keyout ca.key -out ca.pem -days 2 -subj /CN=Test-CA");
    made.openssl("req -newkey rsa:2048 -nodes -keyout host.key -out host.csr -subj /CN=" + host);
    Files.writeString(folder.resolve("host.ext"), "subjectAltName=" + name(host) + "\n");
    made.openssl(
        "x509 -req -in host.csr -CA ca.pem -CAkey ca.key -CAcreateserial -days 2 -out host.pem"
            + " -extfile host.ext");
    made.openssl(
        "pkcs12 -export -in host.pem -inkey host.key -out host.p12 -passout pass:" + PASSWORD);
    return made;
  }

  private static String name(String host) {
    return host.matches("[0-9.]+") ? "IP:" + host : "DNS:" + host;
  }

  Path authority() {
    return folder.resolve("ca.pem");
  }

  /** Lines for a broker's configuration. */
  String[] broker() {
    return new String[] {
      "certfile " + folder.resolve("host.pem"),
      "keyfile " + folder.resolve("host.key"),
      "allow_anonymous true"
    };
  }

  private void openssl(String arguments) throws IOException, InterruptedException {
    List<String> command = new ArrayList<>(List.of("openssl"));
    command.addAll(List.of(arguments.split(" ", -1)));
    try {
      Process process =
          new ProcessBuilder(command)
              .directory(folder.toFile())
              .redirectErrorStream(true)
              .redirectOutput(folder.resolve("openssl.log").toFile())
              .start();
      if (process.waitFor() != 0) {
        throw new AssertionError(Files.readString(folder.resolve("openssl.log")));
      }
    } catch (IOException e) {
      assumeTrue(false, "skipped: openssl is not installed");
    }
  }
}
