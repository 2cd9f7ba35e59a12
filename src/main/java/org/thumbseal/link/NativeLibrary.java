package org.thumbseal.link;

import com.fazecast.jSerialComm.SerialPort;
import java.nio.file.Path;
import java.util.List;
import java.util.function.Supplier;
import org.jspecify.annotations.Nullable;
import org.thumbseal.link.LinkUnavailable.Reason;

/**
 * Lets the serial library load its native part, from a place that only this user can write to.
 *
 * <p>Left alone, version 2.11.4 loads whatever file of the right name it finds in {@code
 * jSerialComm/2.11.4} of the shared temporary folder, where any user of the machine may have put
 * it, and else unpacks its own there, writable for all. The folder comes from two system properties
 * that are read once, when its class is initialised; so for that moment they point to fresh folders
 * with owner-only permissions. Loading the unpacked file beforehand instead does not work: the
 * native part initialises the class itself, before it counts as loaded.
 */
final class NativeLibrary {
  private static final String CURE =
      "the serial library cannot be loaded; unpack the file for this machine from the jSerialComm"
          + " jar and start Java with -DjSerialComm.library.path=ITS_FOLDER";

  private static @Nullable String outcome;

  private NativeLibrary() {}

  /**
   * Makes the serial library usable; the second call and later ones repeat the outcome of the
   * first.
   *
   * @throws LinkUnavailable if it is not to be had in this process, with the cure
   */
  static synchronized void load() throws LinkUnavailable {
    String result = outcome;
    if (result == null) {
      // The temporary folder of Windows is the user's own, and what is loaded there stays open.
      result = SerialPath.windows() ? start() : startInPrivate();
      outcome = result;
    }
    if (!result.isEmpty()) {
      throw new LinkUnavailable(Reason.NO_LIBRARY, result);
    }
  }

  private static String startInPrivate() {
    List<PrivateFolder> folders = PrivateFolder.wherePossible();
    if (folders.isEmpty()) {
      return CURE;
    }
    Path first = folders.get(0).path();
    Path other = folders.get(folders.size() - 1).path();
    try {
      return during(
          "java.io.tmpdir", first, () -> during("user.home", other, NativeLibrary::start));
    } finally {
      folders.forEach(PrivateFolder::close);
    }
  }

  private static String during(String property, Path value, Supplier<String> action) {
    String before = System.setProperty(property, value.toString());
    try {
      return action.get();
    } finally {
      if (before == null) {
        System.clearProperty(property);
      } else {
        System.setProperty(property, before);
      }
    }
  }

  private static String start() {
    try {
      SerialPort.getVersion();
      SerialPort.getCommPort(SerialPath.windows() ? "COM1" : "/dev/null");
      return "";
    } catch (LinkageError e) {
      return CURE;
    }
  }
}
