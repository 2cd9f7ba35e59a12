package org.thumbseal.link;

import java.nio.file.Files;
import java.nio.file.InvalidPathException;
import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;
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
    Path path = only(path(port), ports);
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

  /** A last part with a star stands for the one name that fits; two are one too many to guess. */
  private static Path only(Path path, SerialPorts ports) throws LinkUnavailable {
    String pattern = String.valueOf(path.getFileName());
    if (!pattern.contains("*")) {
      return path;
    }
    List<Path> fitting = fitting(path.toAbsolutePath().getParent(), pattern);
    if (fitting.isEmpty()) {
      throw new LinkUnavailable(Reason.MISSING, SerialFault.noSuchPort(ports));
    }
    if (fitting.size() > 1) {
      throw new LinkUnavailable(
          Reason.AMBIGUOUS,
          "several ports fit ("
              + fitting.stream().map(SerialPath::name).collect(Collectors.joining(", "))
              + "); write more of the name");
    }
    return fitting.get(0);
  }

  private static List<Path> fitting(@Nullable Path folder, String pattern) {
    Pattern wanted = Pattern.compile("\\Q" + pattern.replace("*", "\\E.*\\Q") + "\\E");
    return PortNames.in(folder == null ? Path.of("/") : folder).stream()
        .filter(path -> wanted.matcher(name(path)).matches())
        .toList();
  }

  private static String name(Path path) {
    return String.valueOf(path.getFileName());
  }

  private static Path path(String port) throws LinkUnavailable {
    try {
      return port.contains("/") ? Path.of(port) : Path.of("/dev", port);
    } catch (InvalidPathException e) {
      throw new LinkUnavailable(Reason.MISSING, "no such port: the name is not a path");
    }
  }
}
