package org.thumbseal.link;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.PosixFileAttributes;
import java.util.List;
import org.thumbseal.link.LinkUnavailable.Reason;

/**
 * What the error numbers of a failed opening mean for a person. They are {@code errno} of Linux and
 * macOS, or {@code GetLastError} of Windows.
 */
final class SerialFault {
  private static final int NO_SUCH_FILE = 2;
  private static final String USUAL_GROUP = "dialout";
  private static final int PORTS_NAMED = 6;

  private SerialFault() {}

  /**
   * The failure for a person.
   *
   * @param code error number of the opening
   * @param path of the port
   */
  static LinkUnavailable of(int code, Path path, SerialPorts ports) {
    if (code == NO_SUCH_FILE && Files.exists(path)) {
      // What the library says of a port that this very process has open.
      return new LinkUnavailable(Reason.BUSY, "already open in this program; give each port once");
    }
    return SerialPath.windows() ? ofWindows(code, ports) : ofPosix(code, path, ports);
  }

  static LinkUnavailable ofPosix(int code, Path path, SerialPorts ports) {
    return switch (code) {
      // ENOENT, ENXIO, ENODEV
      case 2, 6, 19 -> new LinkUnavailable(Reason.MISSING, noSuchPort(ports));
      // EPERM, EACCES
      case 1, 13 -> new LinkUnavailable(Reason.DENIED, denied(group(path)));
      // EAGAIN of Linux, EBUSY, EAGAIN of macOS: the lock is held by another program
      case 11, 16, 35 -> new LinkUnavailable(Reason.BUSY, BUSY);
      // ENOTTY, EINVAL
      case 25, 22 ->
          new LinkUnavailable(Reason.WRONG_KIND, "it does not behave like a serial port");
      default -> new LinkUnavailable(Reason.FAILED, failed(code));
    };
  }

  static LinkUnavailable ofWindows(int code, SerialPorts ports) {
    return switch (code) {
      // ERROR_FILE_NOT_FOUND, ERROR_PATH_NOT_FOUND
      case 2, 3 -> new LinkUnavailable(Reason.MISSING, noSuchPort(ports));
      // ERROR_ACCESS_DENIED, ERROR_SHARING_VIOLATION: Windows says both of a port in use
      case 5, 32 -> new LinkUnavailable(Reason.BUSY, BUSY);
      default -> new LinkUnavailable(Reason.FAILED, failed(code));
    };
  }

  private static final String BUSY = "in use by another program; close that program";

  static String noSuchPort(SerialPorts ports) {
    try {
      return noSuchPort(ports.list().stream().map(PortDescription::path).toList());
    } catch (LinkUnavailable e) {
      return "no such port";
    }
  }

  private static String noSuchPort(List<String> names) {
    if (names.isEmpty()) {
      return "no such port (no serial port is plugged in)";
    }
    String more = names.size() > PORTS_NAMED ? ", ..." : "";
    List<String> few = names.subList(0, Math.min(PORTS_NAMED, names.size()));
    return "no such port (there are: " + String.join(", ", few) + more + ")";
  }

  private static String denied(String group) {
    String user = System.getProperty("user.name", "USER");
    return "permission denied; the port belongs to group "
        + group
        + (": 'sudo usermod -aG " + group + " " + user + "', then log out and in again")
        + (" (a systemd service: SupplementaryGroups=" + group + ")");
  }

  /** The group of the device; where it cannot be told, or is the administrator's, the usual one. */
  static String group(Path path) {
    try {
      String group = Files.readAttributes(path, PosixFileAttributes.class).group().getName();
      return group.equals("root") ? USUAL_GROUP : group;
    } catch (IOException | UnsupportedOperationException e) {
      return USUAL_GROUP;
    }
  }

  private static String failed(int code) {
    return "cannot be opened (error " + code + " of the system); unplug it and plug it in again";
  }
}
