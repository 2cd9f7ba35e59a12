package org.thumbseal.index;

import java.sql.SQLException;
import java.util.List;

/** Takes out of the index what no file vouches for any more. Runs within a transaction. */
final class Sweep {
  private static final String FILE_OF_DOCUMENT =
      "SELECT 1 FROM files f WHERE f.id = d.id AND f.digest = d.digest";
  private static final String PATH =
      "(CASE WHEN f.folder = '' THEN f.name ELSE f.folder || '/' || f.name END)";
  private static final String LONELY =
      "SELECT d.id FROM documents d WHERE NOT EXISTS (" + FILE_OF_DOCUMENT + ")";
  private static final String MOVED =
      "UPDATE documents AS d SET path = (SELECT min("
          + PATH
          + ") FROM files f WHERE f.id = d.id AND f.digest = d.digest) WHERE NOT EXISTS ("
          + FILE_OF_DOCUMENT
          + " AND "
          + PATH
          + " = d.path)";
  private static final String UNSEEN =
      " FROM files WHERE id IS NOT NULL AND NOT EXISTS"
          + " (SELECT 1 FROM documents d WHERE d.id = files.id)";

  private final Session session;

  Sweep(Session session) {
    this.session = session;
  }

  /** Removes documents without a file; gives how many. */
  long run() throws SQLException {
    session.flush();
    long lonely = session.count("SELECT count(*) FROM (" + LONELY + ") AS lonely");
    if (lonely > 0) {
      removeLonely();
      new StandingRows(session).settleAll();
    }
    session.run(MOVED);
    return lonely;
  }

  private void removeLonely() throws SQLException {
    for (Table table : Table.CONTENT) {
      if (table != Table.DOCUMENTS) {
        session.run("DELETE FROM " + table.sql() + " WHERE id IN (" + LONELY + ")");
      }
    }
    session.run("DELETE FROM documents WHERE id IN (" + LONELY + ")");
  }

  /**
   * Forgets files whose document gave way to another of its id that is gone now, so that they are
   * read again; whether there were any.
   */
  boolean forgetUnseen() throws SQLException {
    List<Long> sources = session.list("SELECT DISTINCT source" + UNSEEN, row -> row.getLong(1));
    for (long source : sources) {
      session.run("DELETE FROM folders WHERE source = ?", source);
    }
    session.run("DELETE" + UNSEEN);
    return !sources.isEmpty();
  }
}
