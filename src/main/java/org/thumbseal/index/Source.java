package org.thumbseal.index;

import java.io.IOException;
import java.nio.file.Path;
import java.sql.SQLException;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import org.thumbseal.seal.TrustStore;

/**
 * A results directory as an index knows it.
 *
 * @param session on the base
 * @param number by which its files are known
 */
record Source(Session session, long number) {
  /** Finds it, or makes its row. */
  static Source of(Session session, String name) throws SQLException, RecordsException {
    List<Long> there = numbers(session, name);
    if (!there.isEmpty()) {
      return new Source(session, there.get(0));
    }
    return session.write(
        () -> {
          List<Long> since = numbers(session, name);
          if (!since.isEmpty()) {
            return new Source(session, since.get(0));
          }
          long number = 1 + session.count("SELECT COALESCE(max(source), 0) FROM sources");
          session.run(Table.SOURCES.insert(), number, name, "");
          return new Source(session, number);
        });
  }

  private static List<Long> numbers(Session session, String name) throws SQLException {
    return session.list("SELECT source FROM sources WHERE name = ?", row -> row.getLong(1), name);
  }

  /**
   * The name of a directory in a base: in a base that lies in it none is needed, and it may be
   * moved; on a server two computers may have one of the same path.
   */
  static String name(RecordsAddress address, Path results, String computer) {
    Path place = real(results);
    boolean inside = address.file().map(f -> real(f).getParent()).filter(place::equals).isPresent();
    if (inside) {
      return ".";
    }
    return address.isServer() ? computer + ":" + place : place.toString();
  }

  private static Path real(Path path) {
    try {
      return path.toRealPath();
    } catch (IOException e) {
      return path.toAbsolutePath().normalize();
    }
  }

  String head() throws SQLException {
    return session
        .list("SELECT head FROM sources WHERE source = ?", row -> row.getString(1), number)
        .stream()
        .findFirst()
        .orElse("");
  }

  void setHead(String head) throws SQLException {
    session.run("UPDATE sources SET head = ? WHERE source = ?", head, number);
  }

  /** When each folder was last looked through. */
  Map<String, Long> folders() throws SQLException {
    Map<String, Long> folders = new HashMap<>();
    session.list(
        "SELECT folder, changed FROM folders WHERE source = ?",
        row -> folders.put(row.getString(1), row.getLong(2)),
        number);
    return folders;
  }

  void setFolder(String folder, long changed) throws SQLException {
    session.run(
        Table.FOLDERS.insert()
            + " ON CONFLICT (source, folder) DO UPDATE SET changed = excluded.changed",
        number,
        folder,
        changed);
  }

  /** Forgets every file, or those of one folder. */
  void forgetFiles() throws SQLException {
    session.run("DELETE FROM files WHERE source = ?", number);
    session.run("DELETE FROM folders WHERE source = ?", number);
    setHead("");
  }

  void forgetFolder(String folder) throws SQLException {
    session.run("DELETE FROM files WHERE source = ? AND folder = ?", number, folder);
    session.run("DELETE FROM folders WHERE source = ? AND folder = ?", number, folder);
  }

  void forgetFile(String folder, String name) throws SQLException {
    session.run(
        "DELETE FROM files WHERE source = ? AND folder = ? AND name = ?", number, folder, name);
  }

  /** Whether the keys are those of the last time. */
  boolean trusts(TrustStore trust) throws SQLException {
    return bounds(trust).equals(bounds());
  }

  /** Forgets the files of keys that are trusted otherwise than before, so that they are read. */
  void trust(TrustStore trust) throws SQLException {
    Map<String, String> now = bounds(trust);
    Map<String, String> before = bounds();
    Map<String, String> changed = new HashMap<>(before);
    changed.putAll(now);
    changed.keySet().removeIf(kid -> Objects.equals(now.get(kid), before.get(kid)));
    for (String kid : changed.keySet()) {
      session.run("DELETE FROM files WHERE source = ? AND kid = ?", number, kid);
    }
    session.run("DELETE FROM folders WHERE source = ?", number);
    session.run("DELETE FROM trusted WHERE source = ?", number);
    for (Map.Entry<String, String> key : now.entrySet()) {
      session.run(Table.TRUSTED.insert(), number, key.getKey(), key.getValue());
    }
  }

  private Map<String, String> bounds() throws SQLException {
    Map<String, String> bounds = new HashMap<>();
    session.list(
        "SELECT kid, bounds FROM trusted WHERE source = ?",
        row -> bounds.put(row.getString(1), row.getString(2)),
        number);
    return bounds;
  }

  private static Map<String, String> bounds(TrustStore trust) {
    Map<String, String> bounds = new HashMap<>();
    trust.all().forEach(key -> bounds.put(key.key().kid(), key.validity().text()));
    return bounds;
  }
}
