package org.thumbseal.link;

import java.nio.file.Files;
import java.nio.file.InvalidPathException;
import java.nio.file.Path;
import java.util.Locale;
import org.thumbseal.link.LinkUnavailable.Reason;

/**
 * Looks before the library does: for a path that is not there it would open a port of the same last
 * name in {@code /dev}, and for a bare name a file of that name in the working folder.
 */
final class SerialPath {
  private SerialPath() {}

  static boolean windows() {
    return System.getProperty("os.name", "").toLowerCase(Locale.ROOT).startsWith("windows");
  }

  /** The path to open; on Windows the name itself, which is no path. */
  static String resolve(String port, SerialPorts ports) throws LinkUnavailable {
    return windows() ? port : resolvePath(port, ports);
  }

  private static String resolvePath(String port, SerialPorts ports) throws LinkUnavailable {
    Path path = path(port);
    if (!Files.exists(path)) {
      throw new LinkUnavailable(Reason.MISSING, SerialFault.noSuchPort(ports));
    }
    if (Files.isDirectory(path)) {
      throw new LinkUnavailable(
          Reason.WRONG_KIND, "it is a directory, not a serial port; 'thumbseal ports' lists them");
    }
    if (Files.isRegularFile(path)) {
      throw new LinkUnavailable(
          Reason.WRONG_KIND,
          "it is a plain file, not a serial port; give raw bytes as file:PATH, a capture to"
              + " 'thumbseal replay'");
    }
    return path.toAbsolutePath().toString();
  }

  private static Path path(String port) throws LinkUnavailable {
    try {
      return port.contains("/") ? Path.of(port) : Path.of("/dev", port);
    } catch (InvalidPathException e) {
      throw new LinkUnavailable(Reason.MISSING, "no such port: the name is not a path");
    }
  }
}
