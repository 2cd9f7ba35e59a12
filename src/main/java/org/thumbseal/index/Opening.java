package org.thumbseal.index;

import java.io.IOException;
import java.net.InetAddress;
import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.SQLException;
import java.util.function.Consumer;

/** Opens an index, with its tables made. */
record Opening(RecordsAddress address, Consumer<String> remarks) {
  Records open() throws RecordsException {
    try {
      return prepared(Base.open(address, System.getenv()));
    } catch (SQLException e) {
      throw Trouble.of(address, e);
    }
  }

  Records openOrInMemory() throws RecordsException {
    Path file = address.file().orElseThrow();
    Path folder = file.toAbsolutePath().getParent();
    boolean writable =
        Files.exists(file) ? Files.isWritable(file) : folder != null && Files.isWritable(folder);
    return writable && folder != null && Files.isWritable(folder) ? open() : inMemory();
  }

  private Records inMemory() throws RecordsException {
    remarks.accept(
        address.shown()
            + ": may not be written here; the index is made in memory for this once"
            + " (--records FILE names another place)");
    try {
      return prepared(Base.inMemory());
    } catch (SQLException e) {
      throw Trouble.of(address, e);
    }
  }

  private Records prepared(Session session) throws SQLException, RecordsException {
    boolean good = false;
    try {
      new Schema(session).prepare(remarks);
      good = true;
      return new Records(address, session, address.isServer() ? computer() : "");
    } finally {
      if (!good) {
        session.close();
      }
    }
  }

  /** Its name where it has one: benches that share a base must not take each other's folders. */
  private static String computer() {
    try {
      Path named = Path.of("/etc/hostname");
      String name = Files.isReadable(named) ? Files.readString(named).strip() : "";
      return name.isEmpty() ? InetAddress.getLocalHost().getHostName() : name;
    } catch (IOException e) {
      return System.getenv().getOrDefault("COMPUTERNAME", "computer");
    }
  }
}
