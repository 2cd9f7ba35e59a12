package org.thumbseal.index;

import java.io.IOException;
import java.io.InputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import org.sqlite.SQLiteJDBCLoader;
import org.sqlite.util.LibraryLoaderUtil;
import org.thumbseal.link.LeftFolders;
import org.thumbseal.link.PrivateFolder;

/**
 * Lets SQLite load its native part from a place that only this user can write to. Left alone,
 * version 3.53 unpacks it into the shared temporary folder, where others of the machine may reach
 * between the writing of the file and its loading. A folder that the user names ({@code
 * org.sqlite.lib.path}) is left to the user.
 */
final class SqliteLibrary {
  private static final String PATH = "org.sqlite.lib.path";
  private static final String NAME = "org.sqlite.lib.name";
  private static final String TEMPORARY = "org.sqlite.tmpdir";
  private static final String CURE =
      "SQLite cannot be loaded on this machine; name a base on a server with"
          + " --records jdbc:postgresql://HOST/BASE, or unpack the file for this machine from the"
          + " sqlite-jdbc jar and start Java with -Dorg.sqlite.lib.path=ITS_FOLDER";

  private static @Nullable Boolean loaded;

  private SqliteLibrary() {}

  /**
   * Makes SQLite usable in this process.
   *
   * @throws RecordsException if it is not to be had, with the cure
   */
  static synchronized void load() throws RecordsException {
    Boolean before = loaded;
    boolean now = before == null ? first() : before;
    loaded = now;
    if (!now) {
      throw RecordsException.machine(CURE);
    }
  }

  private static boolean first() {
    return System.getProperty(PATH, "").isEmpty() ? unpacked() : started();
  }

  private static boolean unpacked() {
    List<PrivateFolder> folders = PrivateFolder.wherePossible();
    folders.forEach(LeftFolders::removeBeside);
    try {
      return folders.stream().anyMatch(SqliteLibrary::loadedFrom);
    } finally {
      folders.forEach(PrivateFolder::close);
    }
  }

  private static boolean loadedFrom(PrivateFolder folder) {
    return unpack(folder).filter(Files::isExecutable).isPresent()
        && during(
            Map.of(
                PATH, folder.path().toString(),
                NAME, LibraryLoaderUtil.getNativeLibName(),
                TEMPORARY, folder.path().toString()));
  }

  private static Optional<Path> unpack(PrivateFolder folder) {
    String name = LibraryLoaderUtil.getNativeLibName();
    String resource = LibraryLoaderUtil.getNativeLibResourcePath() + "/" + name;
    try (InputStream in = SQLiteJDBCLoader.class.getResourceAsStream(resource)) {
      return in == null ? Optional.empty() : Optional.of(folder.write(name, in.readAllBytes()));
    } catch (IOException e) {
      // A full disk: the next folder may lie on another.
      return Optional.empty();
    }
  }

  private static boolean during(Map<String, String> properties) {
    properties.forEach(System::setProperty);
    try {
      return started();
    } finally {
      properties.keySet().forEach(System::clearProperty);
    }
  }

  private static boolean started() {
    try {
      return SQLiteJDBCLoader.initialize();
    } catch (Exception | LinkageError e) {
      return false;
    }
  }
}
