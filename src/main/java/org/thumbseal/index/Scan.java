package org.thumbseal.index;

import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.sql.SQLException;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import org.thumbseal.archive.ArchiveException;
import org.thumbseal.archive.InOrder;
import org.thumbseal.archive.StoredFolders;
import org.thumbseal.seal.SealVerifier;
import org.thumbseal.seal.Sha256;
import org.thumbseal.seal.TrustStore;

/**
 * Brings what an index knows of one results directory up to date. Folders in which no name came or
 * went since they were last looked through are passed over, for nothing sealed ever changes; a file
 * that was replaced under its own name shows when all is made anew.
 */
final class Scan {
  private static final int BATCH = 200;
  private static final int MOST_LOOKED_AT_AGAIN = 200;
  private static final int MOST_TOLD = 100;

  private final Session session;
  private final Source source;
  private final Path results;
  private final TrustStore trust;
  private final StoredFolders stored;
  private final SealVerifier verifier;
  private final List<KeptOut> keptOut = new ArrayList<>();
  private final List<Entry> pending = new ArrayList<>();
  private final IngestProgress progress;
  private long looked;
  private long all;
  private long added;
  private long removed;

  Scan(Source source, Path results, TrustStore trust, IngestProgress progress) {
    this.progress = progress;
    this.session = source.session();
    this.source = source;
    this.results = results;
    this.trust = trust;
    this.stored = new StoredFolders(results);
    this.verifier = new SealVerifier(trust);
  }

  /** Looks at what is new, or may be. */
  Refreshed run() throws SQLException, RecordsException {
    try {
      return look();
    } catch (ArchiveException e) {
      throw RecordsException.machine(String.valueOf(e.getMessage()));
    }
  }

  private Refreshed look() throws SQLException, RecordsException, ArchiveException {
    String head = Sha256.hex(stored.head().getBytes(StandardCharsets.UTF_8));
    Map<String, Long> folders = folders();
    requireSame(folders);
    if (!source.trusts(trust)) {
      requireKey();
      forget(() -> source.trust(trust));
    }
    lookAgain();
    long before;
    do {
      before = removed;
      runOnce(head, folders);
    } while (removed > before && session.write(new Sweep(session)::forgetUnseen));
    return new Refreshed(added, removed, keptOut, List.of());
  }

  private Map<String, Long> folders() throws ArchiveException {
    Map<String, Long> folders = new TreeMap<>();
    for (Path folder : stored.folders()) {
      folders.put(relative(folder), StoredFolders.changed(folder));
    }
    return folders;
  }

  private String relative(Path folder) {
    return results.relativize(folder).toString();
  }

  /** A stick that was pulled leaves an empty folder: that is no reason to forget everything. */
  private void requireSame(Map<String, Long> folders)
      throws SQLException, RecordsException, ArchiveException {
    boolean empty = stored.head().isEmpty() && folders.size() == 1;
    if (empty && source.folders().size() > 1) {
      throw RecordsException.machine(
          results
              + ": holds no results any more, but the index knows some from there; put its disk"
              + " back, or name another --results directory");
    }
  }

  /** A key that was not named must not cost an index of years. */
  private void requireKey() throws RecordsException {
    if (trust.all().isEmpty()) {
      throw RecordsException.mistake(
          results
              + ": no key is trusted, though the index was made with one; name yours with --key or"
              + " THUMBSEAL_KEY, or others with --trust");
    }
  }

  private void runOnce(String head, Map<String, Long> folders)
      throws SQLException, RecordsException, ArchiveException {
    Map<String, Long> known = source.folders();
    if (source.head().equals(head) && known.equals(folders)) {
      return;
    }
    for (String gone : known.keySet()) {
      if (!folders.containsKey(gone)) {
        forget(() -> source.forgetFolder(gone));
      }
    }
    Map<String, Long> changed = new TreeMap<>(folders);
    changed.entrySet().removeIf(folder -> folder.getValue().equals(known.get(folder.getKey())));
    count(changed.keySet());
    for (Map.Entry<String, Long> folder : changed.entrySet()) {
      lookThrough(folder.getKey());
      source.setFolder(folder.getKey(), folder.getValue());
    }
    source.setHead(head);
  }

  private void count(Set<String> changed) throws ArchiveException {
    looked = 0;
    all = 0;
    for (String folder : progress == IngestProgress.NONE ? Set.<String>of() : changed) {
      stored.forEachName(results.resolve(folder), name -> all++);
    }
  }

  private void lookThrough(String folder) throws SQLException, RecordsException, ArchiveException {
    KnownNames known = KnownNames.of(session, source.number(), folder);
    try (InOrder<Entry> reading = new InOrder<>(pending::add)) {
      stored.forEachName(
          results.resolve(folder),
          name -> {
            looked++;
            if (!known.see(name)) {
              reading.give(() -> Entry.read(results, folder, name, verifier));
              writeIfMany();
            }
          });
      reading.finish();
      write();
    } catch (Carried e) {
      throw e.sql();
    }
    forget(folder, known.unseen());
  }

  private void forget(String folder, List<String> names) throws SQLException, RecordsException {
    if (!names.isEmpty()) {
      forget(
          () -> {
            for (String name : names) {
              source.forgetFile(folder, name);
            }
          });
    }
  }

  /** Forgets files, and in the same step what only they vouched for. */
  private void forget(Forgetting files) throws SQLException, RecordsException {
    removed +=
        session.write(
            () -> {
              files.run();
              return new Sweep(session).run();
            });
  }

  /** Takes files out of the index. */
  @FunctionalInterface
  private interface Forgetting {
    void run() throws SQLException;
  }

  /** A file that was kept out may have been put right where it lies. */
  private void lookAgain() throws SQLException, RecordsException {
    List<Entry> out =
        session.list(
            "SELECT folder, name FROM files WHERE source = ? AND kept_out IS NOT NULL"
                + " ORDER BY folder, name LIMIT "
                + MOST_LOOKED_AT_AGAIN,
            row -> Entry.read(results, row.getString(1), row.getString(2), verifier),
            source.number());
    pending.addAll(out);
    write();
  }

  private void writeIfMany() {
    if (pending.size() >= BATCH) {
      try {
        write();
      } catch (SQLException e) {
        throw new Carried(e);
      } catch (RecordsException e) {
        throw new IllegalStateException(e);
      }
    }
  }

  private void write() throws SQLException, RecordsException {
    if (!pending.isEmpty()) {
      added += new Ingest(session, source.number()).write(pending);
      pending.stream().filter(e -> e.content().isEmpty()).forEach(this::tell);
      pending.clear();
      progress.seen(looked, all);
    }
  }

  private void tell(Entry entry) {
    if (keptOut.size() < MOST_TOLD) {
      keptOut.add(new KeptOut(entry.path(), entry.fault()));
    }
  }

  /** Takes trouble with the base through a listing. */
  private static final class Carried extends RuntimeException {
    private static final long serialVersionUID = 1L;
    private final SQLException sql;

    Carried(SQLException sql) {
      super(sql);
      this.sql = sql;
    }

    SQLException sql() {
      return sql;
    }
  }
}
