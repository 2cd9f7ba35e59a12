package org.thumbseal.index;

import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.SQLException;
import java.util.Map;
import java.util.Properties;
import java.util.logging.Level;
import java.util.logging.Logger;
import org.sqlite.SQLiteConfig;
import org.sqlite.SQLiteConfig.JournalMode;
import org.sqlite.SQLiteConfig.SynchronousMode;

/** Opens connections. */
final class Base {
  /** The driver repeats a URL that it cannot read, with the password; held, or it is collected. */
  private static final Logger DRIVER = Logger.getLogger("org.postgresql");

  private static final String SECONDS_TO_CONNECT = "10";
  private static final String WAIT = "10s";
  private static final int BUSY_MILLIS = 10_000;

  private Base() {}

  static Session open(RecordsAddress address, Map<String, String> environment)
      throws SQLException, RecordsException {
    return address.isServer() ? server(address, environment) : sqlite(address);
  }

  /** One that is gone when the session is closed. */
  static Session inMemory() throws SQLException, RecordsException {
    SqliteLibrary.load();
    return new Session(config().createConnection("jdbc:sqlite::memory:"), Dialect.SQLITE);
  }

  private static Session sqlite(RecordsAddress address) throws SQLException, RecordsException {
    Path file = address.file().orElseThrow();
    Path folder = file.toAbsolutePath().getParent();
    if (folder != null && !Files.isDirectory(folder)) {
      throw RecordsException.mistake(file + ": there is no such folder");
    }
    SqliteLibrary.load();
    SQLiteConfig config = config();
    config.setJournalMode(JournalMode.WAL);
    // The index can be made anew; a power cut may cost its last documents, never its soundness.
    config.setSynchronous(SynchronousMode.NORMAL);
    return new Session(config.createConnection("jdbc:sqlite:" + file), Dialect.SQLITE);
  }

  private static SQLiteConfig config() {
    SQLiteConfig config = new SQLiteConfig();
    config.setBusyTimeout(BUSY_MILLIS);
    config.setCacheSize(-32_768);
    return config;
  }

  private static Session server(RecordsAddress address, Map<String, String> environment)
      throws SQLException, RecordsException {
    DRIVER.setLevel(Level.OFF);
    Properties more = new Properties();
    more.setProperty("ApplicationName", "thumbseal");
    more.setProperty("connectTimeout", SECONDS_TO_CONNECT);
    more.setProperty("loginTimeout", SECONDS_TO_CONNECT);
    more.setProperty("reWriteBatchedInserts", "true");
    more.setProperty("options", "-c lock_timeout=" + WAIT + " -c client_min_messages=error");
    String user = environment.getOrDefault("PGUSER", "");
    if (!user.isEmpty() && !address.url().matches(".*[?&]user=.*")) {
      more.setProperty("user", user);
    }
    Connection connection = new org.postgresql.Driver().connect(address.url(), more);
    if (connection == null) {
      throw RecordsException.mistake("--records: say jdbc:postgresql://HOST:PORT/BASE");
    }
    return new Session(connection, Dialect.POSTGRESQL);
  }
}
