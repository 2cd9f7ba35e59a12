package org.thumbseal.link;

import com.fazecast.jSerialComm.SerialPort;
import com.fazecast.jSerialComm.SerialPortThreadFactory;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.ThreadFactory;
import java.util.function.Supplier;
import org.jspecify.annotations.Nullable;
import org.thumbseal.link.LinkUnavailable.Reason;

/**
 * Lets the serial library load its native part: a file whose digest stands in the program, from a
 * place that only this user can write to.
 *
 * <p>Left alone, version 2.11.4 loads whatever file of the right name it finds in {@code
 * jSerialComm/2.11.4} of the shared temporary folder, where any user of the machine may have put
 * it, and else unpacks its own there, writable for all. It reads three system properties once, when
 * its class is initialised: {@code jSerialComm.library.path}, a folder in which it looks first for
 * {@code Linux/x86_64/libjSerialComm.so} and the like; then {@code java.io.tmpdir} and {@code
 * user.home}, where it cleans up, looks and unpacks. So for that moment the first names the folder
 * with the checked files, and the other two a file, in which nothing can be found or made. Loading
 * the checked file beforehand instead does not work: the native part initialises the class itself,
 * before it counts as loaded.
 */
final class NativeLibrary {
  private static final String LIBRARY_PATH = "jSerialComm.library.path";
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
      result = first();
      outcome = result;
    }
    if (!result.isEmpty()) {
      throw new LinkUnavailable(Reason.NO_LIBRARY, result);
    }
  }

  private static String first() {
    try {
      Optional<String> system = LibrarySystem.folder(System.getProperty("os.name", ""));
      return system.isPresent() ? on(system.get()) : CURE;
    } catch (LibraryRefused e) {
      return String.valueOf(e.getMessage());
    }
  }

  private static String on(String system) throws LibraryRefused {
    LibraryTable table = LibraryTable.ofProgram();
    GivenLibrary given = new GivenLibrary(table, system);
    given.requireOn(System.getProperty("java.library.path", ""));
    String named = System.getProperty(LIBRARY_PATH, "");
    return named.isEmpty()
        ? unpacked(new UnpackedLibrary(table, system, UnpackedLibrary::executable))
        : startWith(given.in(named));
  }

  private static String unpacked(UnpackedLibrary library) throws LibraryRefused {
    List<PrivateFolder> folders = PrivateFolder.wherePossible();
    folders.forEach(LeftFolders::removeBeside);
    try {
      return library.into(folders).map(NativeLibrary::startWith).orElse(CURE);
    } finally {
      folders.forEach(PrivateFolder::close);
    }
  }

  private static String startWith(LibraryPlace place) {
    Path nothing = place.file();
    return during(
        LIBRARY_PATH,
        place.folder(),
        () ->
            during(
                "java.io.tmpdir",
                nothing,
                () -> during("user.home", nothing, NativeLibrary::start)));
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
    ThreadFactory before = SerialPortThreadFactory.get();
    SerialPortThreadFactory.set(NativeLibrary::hook);
    try {
      SerialPort.getVersion();
      SerialPort.getCommPort(SerialPath.windows() ? "COM1" : "/dev/null");
      return "";
    } catch (LinkageError e) {
      return CURE;
    } finally {
      SerialPortThreadFactory.set(before);
    }
  }

  /** The library's thread for the end of the process: it calls the native part, loaded or not. */
  private static Thread hook(Runnable task) {
    Thread thread = new Thread(task, "serial-library-end");
    thread.setUncaughtExceptionHandler(
        (failed, error) -> {
          // The cure has been said; a stack trace after it helps nobody.
        });
    return thread;
  }
}
