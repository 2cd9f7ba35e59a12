package org.thumbseal.cli;

import java.net.URISyntaxException;
import java.nio.file.Path;
import java.security.CodeSource;

/** How this program was started, to tell a person how to start it again. */
final class Program {
  private Program() {}

  /** The command line for a command, as it would be typed here. */
  static String call(String command, String arguments) {
    String jar = jar();
    return jar.isEmpty()
        ? "mvn -q compile exec:java -Dexec.args=\"" + command + " " + arguments + "\""
        : "java -jar " + jar + " " + command + " " + arguments;
  }

  private static String jar() {
    CodeSource source = Program.class.getProtectionDomain().getCodeSource();
    try {
      Path path = source == null ? Path.of("") : Path.of(source.getLocation().toURI());
      return path.toString().endsWith(".jar") ? shortest(path) : "";
    } catch (URISyntaxException e) {
      return "";
    }
  }

  private static String shortest(Path jar) {
    Path here = Path.of("").toAbsolutePath();
    return jar.startsWith(here) ? here.relativize(jar).toString() : jar.toString();
  }
}
