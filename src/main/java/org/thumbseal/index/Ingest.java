package org.thumbseal.index;

import java.sql.SQLException;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.thumbseal.index.Entry.Content;

/**
 * Writes files into the index, a batch in one transaction. Of documents with one id the one with
 * the lowest digest stands: in whichever order they come, the index is the same.
 */
final class Ingest {
  private static final String FILE =
      Table.FILES.insert()
          + " ON CONFLICT (source, folder, name) DO UPDATE SET kid = excluded.kid,"
          + " id = excluded.id, digest = excluded.digest, kept_out = excluded.kept_out";
  private static final String KNOWN =
      "SELECT id, digest FROM documents WHERE id IN " + Chunks.MARKS;
  private static final String PATH =
      "UPDATE documents SET path = ? WHERE id = ? AND digest = ? AND path > ?";

  private final Session session;
  private final long source;

  Ingest(Session session, long source) {
    this.session = session;
    this.source = source;
  }

  /** Writes a batch and gives how many documents were not there before. */
  long write(List<Entry> entries) throws SQLException, RecordsException {
    return session.write(() -> writeAll(entries));
  }

  private long writeAll(List<Entry> entries) throws SQLException {
    for (Entry entry : entries) {
      addFile(entry);
    }
    Map<String, Entry> standing = standing(entries);
    Map<String, String> known = known(standing);
    long added = 0;
    List<String> touched = new ArrayList<>();
    for (Entry entry : standing.values()) {
      Content content = entry.content().orElseThrow();
      if (put(entry, content, Optional.ofNullable(known.get(content.id())))) {
        added += known.containsKey(content.id()) ? 0 : 1;
        touched.add(content.digest());
        content.corrects().ifPresent(touched::add);
      }
    }
    session.flush();
    new StandingRows(session).settle(touched);
    return added;
  }

  private void addFile(Entry entry) throws SQLException {
    session.add(
        FILE,
        source,
        Texts.clean(entry.folder()),
        Texts.clean(entry.name()),
        entry.kid(),
        entry.content().map(Content::id),
        entry.content().map(Content::digest),
        entry.content().isPresent() ? Optional.empty() : entry.fault());
  }

  /** One for each id. */
  private static Map<String, Entry> standing(List<Entry> entries) {
    Map<String, Entry> standing = new LinkedHashMap<>();
    for (Entry entry : entries) {
      entry.content().ifPresent(c -> standing.merge(c.id(), entry, Ingest::first));
    }
    return standing;
  }

  private static Entry first(Entry one, Entry other) {
    int order = digest(one).compareTo(digest(other));
    return order < 0 || (order == 0 && one.path().compareTo(other.path()) < 0) ? one : other;
  }

  private static String digest(Entry entry) {
    return entry.content().map(Content::digest).orElse("");
  }

  private Map<String, String> known(Map<String, Entry> standing) throws SQLException {
    Map<String, String> known = new HashMap<>();
    for (Object[] chunk : Chunks.of(standing.keySet())) {
      session.list(KNOWN, row -> known.put(row.getString(1), row.getString(2)), chunk);
    }
    return known;
  }

  /** Whether it was written. */
  private boolean put(Entry entry, Content content, Optional<String> known) throws SQLException {
    if (known.isPresent()) {
      int order = content.digest().compareTo(known.get());
      if (order == 0) {
        session.run(PATH, entry.path(), content.id(), content.digest(), entry.path());
      }
      if (order >= 0) {
        return false;
      }
      remove(content.id());
    }
    for (Row row : content.rows()) {
      session.add(row.table().insert(), row.values().toArray());
    }
    return true;
  }

  private void remove(String id) throws SQLException {
    for (Table table : Table.CONTENT) {
      session.run("DELETE FROM " + table.sql() + " WHERE id = ?", id);
    }
  }
}
