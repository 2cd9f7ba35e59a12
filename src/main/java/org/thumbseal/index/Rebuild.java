package org.thumbseal.index;

import java.nio.file.Path;
import java.sql.SQLException;
import java.util.ArrayList;
import java.util.List;
import org.thumbseal.seal.TrustStore;

/**
 * Makes an index anew within one transaction, and tells what had been in it and is gone or another
 * now: that is the only place where a file shows that was exchanged under its own name.
 */
final class Rebuild {
  private static final int MOST_TOLD = 20;
  private static final String BEFORE = "thumbseal_before";
  private static final String LOST =
      " FROM "
          + BEFORE
          + " b LEFT JOIN files f ON f.source = ? AND f.folder = b.folder AND f.name = b.name"
          + " WHERE f.digest IS NULL OR f.digest <> b.digest";

  private final Session session;
  private final TrustStore trust;
  private final IngestProgress progress;
  private final List<KeptOut> keptOut = new ArrayList<>();
  private final List<String> remarks = new ArrayList<>();
  private long added;
  private long removed;

  Rebuild(Session session, TrustStore trust, IngestProgress progress) {
    this.session = session;
    this.trust = trust;
    this.progress = progress;
  }

  void run(Source source, Path results) throws SQLException, RecordsException {
    session.execute(
        "CREATE TEMPORARY TABLE "
            + BEFORE
            + " AS SELECT folder, name, digest FROM files WHERE digest IS NOT NULL AND source = "
            + source.number());
    source.forgetFiles();
    new Sweep(session).run();
    Refreshed fresh = new Scan(source, results, trust, progress).run();
    added += fresh.added();
    keptOut.addAll(fresh.keptOut());
    tell(source, results);
    session.execute("DROP TABLE " + BEFORE);
  }

  private void tell(Source source, Path results) throws SQLException {
    long lost = session.count("SELECT count(*)" + LOST, source.number());
    removed += lost;
    session.list(
        "SELECT b.folder, b.name, f.name" + LOST + " ORDER BY b.folder, b.name LIMIT " + MOST_TOLD,
        row ->
            remarks.add(
                results.resolve(Entry.path(row.getString(1), row.getString(2)))
                    + (row.getString(3) == null
                        ? ": was in the index, and is gone; run verify"
                        : ": is not the document any more that it was; run verify")),
        source.number());
    if (lost > MOST_TOLD) {
      remarks.add(results + ": and so are " + (lost - MOST_TOLD) + " more");
    }
  }

  Refreshed outcome() {
    return new Refreshed(added, removed, keptOut, remarks);
  }
}
