package org.thumbseal.index;

import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.Instant;
import java.util.Collection;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import org.thumbseal.record.Correction;
import org.thumbseal.record.Correction.Change;
import org.thumbseal.record.Correction.Said;
import org.thumbseal.record.Correction.Subject;
import org.thumbseal.record.Standing;

/** Keeps what stands of each document: its own words with all corrections applied. */
final class StandingRows {
  private static final String CORRECTIONS =
      "SELECT id, number, corrected_at, by_name, asset, note, voided, reason FROM corrections"
          + " WHERE subject_digest = ? ORDER BY number, corrected_at, id";
  private static final String SEALED =
      "SELECT d.asset_sealed, t.leak_search FROM documents d LEFT JOIN tests t ON t.id = d.id"
          + " WHERE d.digest = ?";
  private static final String UPDATE =
      "UPDATE documents SET asset = ?, voided = ?, note = ?, corrected_at = ?, corrected_by = ?,"
          + " corrections = ? WHERE digest = ?";
  private static final String CORRECTED =
      "SELECT DISTINCT subject_digest FROM corrections WHERE subject_digest IN " + Chunks.MARKS;

  private final Session session;

  StandingRows(Session session) {
    this.session = session;
  }

  /** Works out anew those of these documents that have corrections. */
  void settle(Collection<String> digests) throws SQLException {
    Set<String> corrected = new LinkedHashSet<>();
    for (Object[] chunk : Chunks.of(digests)) {
      corrected.addAll(session.list(CORRECTED, row -> row.getString(1), chunk));
    }
    for (String digest : corrected) {
      settle(digest);
    }
  }

  /** Works out anew all that had corrections, for some of those may be gone. */
  void settleAll() throws SQLException {
    List<String> digests =
        session.list("SELECT digest FROM documents WHERE corrections > 0", r -> r.getString(1));
    for (String digest : digests) {
      settle(digest);
    }
  }

  /** The pump as it was sealed, and why the test counts nowhere if it is part of a search. */
  private record Sealed(Optional<String> asset, Optional<String> uncounted) {}

  private void settle(String digest) throws SQLException {
    List<Sealed> sealed =
        session.list(
            SEALED, row -> new Sealed(text(row, 1), TestRows.uncounted(text(row, 2))), digest);
    if (sealed.isEmpty()) {
      return;
    }
    List<Correction> corrections = session.list(CORRECTIONS, row -> correction(row), digest);
    Standing standing = Standing.sealed(sealed.get(0).asset());
    for (Correction correction : corrections) {
      standing = correction.appliedTo(standing);
    }
    Optional<Said> last =
        corrections.stream().reduce((first, second) -> second).map(Correction::said);
    session.run(
        UPDATE,
        standing.asset(),
        standing.voided().or(sealed.get(0)::uncounted),
        standing.note(),
        last.map(said -> Texts.of(said.at())),
        last.flatMap(Said::by),
        corrections.size(),
        digest);
  }

  private static Correction correction(ResultSet row) throws SQLException {
    int voided = row.getInt(7);
    Optional<Boolean> gone = row.wasNull() ? Optional.empty() : Optional.of(voided == 1);
    Change change = new Change(text(row, 5), text(row, 6), gone);
    Said said = new Said(change, text(row, 8), text(row, 4), Instant.parse(row.getString(3)));
    Subject subject = new Subject("", "", "", 0, "");
    return new Correction(
        row.getString(1), subject, row.getLong(2), Standing.sealed(Optional.empty()), said);
  }

  private static Optional<String> text(ResultSet row, int column) throws SQLException {
    return Optional.ofNullable(row.getString(column));
  }
}
