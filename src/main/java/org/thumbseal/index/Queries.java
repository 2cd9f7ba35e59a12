package org.thumbseal.index;

import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.Instant;
import java.time.LocalDate;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Consumer;

/** What readers ask. */
final class Queries {
  private static final int PAGE = 500;
  private static final int MOST_TOLD = 100;
  private static final String TEST = "d.kind = 'occlusion-test'";

  /** By the day itself: the other index, of all tests by time, must not look like a way to it. */
  private static final String OF_ASSET =
      TEST + " AND d.asset = ? ORDER BY d.happened_at NULLS FIRST, d.id";

  private static final String WORK =
      "SELECT d.asset, i.work, i.on_day, d.happened_at, i.by_name, i.in_order, d.id"
          + " FROM inspections i JOIN documents d ON d.id = i.id"
          + " WHERE d.voided IS NULL AND d.asset IS NOT NULL";

  /**
   * From the few works to their documents, as for calibrations below: SQLite would go through all
   * documents instead.
   */
  private static final String WORKS_FIRST =
      WORK.replace(
          "JOIN documents d ON d.id = i.id WHERE", "CROSS JOIN documents d WHERE d.id = i.id AND");

  private final Session session;
  private final TestReader tests;

  Queries(Session session) {
    this.session = session;
    this.tests = new TestReader(session, Optional.empty());
  }

  List<String> assets() throws SQLException {
    return session.list(
        "SELECT DISTINCT asset FROM documents d WHERE "
            + TEST
            + " AND voided IS NULL AND asset IS NOT NULL AND happened_at IS NOT NULL ORDER BY asset",
        row -> row.getString(1));
  }

  List<IndexedTest> tests(String asset) throws SQLException {
    return tests.where(OF_ASSET, asset);
  }

  List<IndexedTest> tests(String asset, List<String> quantities) throws SQLException {
    return new TestReader(session, Optional.of(quantities)).where(OF_ASSET, asset);
  }

  long forEachTest(Consumer<IndexedTest> visitor) throws SQLException {
    String time = "";
    String id = "";
    long count = 0;
    List<IndexedTest> page;
    do {
      page =
          tests.where(
              TEST
                  + " AND (COALESCE(d.happened_at, ''), d.id) > (?, ?)"
                  + " ORDER BY d.kind, COALESCE(d.happened_at, ''), d.id LIMIT "
                  + PAGE,
              time,
              id);
      page.forEach(visitor);
      count += page.size();
      if (!page.isEmpty()) {
        IndexedTest last = page.get(page.size() - 1);
        time = last.startedAt().map(Texts::of).orElse("");
        id = last.id();
      }
    } while (page.size() == PAGE);
    return count;
  }

  Optional<Instant> firstTest() throws SQLException {
    return session
        .list(
            "SELECT min(d.happened_at) FROM documents d WHERE d.voided IS NULL AND " + TEST,
            row -> TestReader.instant(row, 1))
        .get(0);
  }

  List<IndexedPart> parts(Optional<String> asset, Instant from, Instant until) throws SQLException {
    return session.list(
        "SELECT d.asset, d.happened_at, c.item, c.part, d.id"
            + " FROM checks c JOIN documents d ON d.id = c.id"
            + " WHERE c.state = 'replaced' AND d.voided IS NULL"
            + " AND d.happened_at >= ? AND d.happened_at < ? AND COALESCE(d.asset, '') BETWEEN ? AND ?"
            + " ORDER BY d.happened_at, d.id, c.place",
        row ->
            new IndexedPart(
                TestReader.text(row, 1),
                TestReader.instant(row, 2),
                row.getString(3),
                TestReader.text(row, 4),
                row.getString(5)),
        Texts.of(from),
        Texts.of(until),
        asset.orElse(""),
        asset.orElse("\uDBFF\uDFFD"));
  }

  List<IndexedWork> lastWorks(LocalDate day) throws SQLException {
    return session.list(
        "SELECT * FROM (SELECT w.*, row_number() OVER (PARTITION BY asset, work"
            + " ORDER BY on_day DESC, happened_at DESC, id DESC) AS place FROM ("
            + WORKS_FIRST
            + " AND i.on_day <= ?) AS w) AS p WHERE place = 1 ORDER BY asset, work",
        Queries::work,
        day.toString());
  }

  List<IndexedWork> works(String asset) throws SQLException {
    return session.list(
        WORK + " AND d.asset = ? ORDER BY i.on_day, d.happened_at, d.id", Queries::work, asset);
  }

  private static IndexedWork work(ResultSet row) throws SQLException {
    int inOrder = row.getInt(6);
    Optional<Boolean> fit = row.wasNull() ? Optional.empty() : Optional.of(inOrder == 1);
    return new IndexedWork(
        row.getString(1),
        row.getString(2),
        LocalDate.parse(row.getString(3)),
        TestReader.instant(row, 4),
        new IndexedWork.Said(TestReader.text(row, 5), fit, row.getString(7)));
  }

  List<IndexedDocument> documents(String asset) throws SQLException {
    return session.list(
        "SELECT d.kind, d.happened_at, d.note, d.id, d.path, d.kid, d.sequence, d.digest"
            + " FROM documents d WHERE d.asset = ? AND d.voided IS NULL"
            + " AND d.kind NOT IN ('occlusion-test', 'correction')"
            + " ORDER BY COALESCE(d.happened_at, ''), d.id",
        Queries::document,
        asset);
  }

  private static IndexedDocument document(ResultSet row) throws SQLException {
    return new IndexedDocument(
        row.getString(1),
        TestReader.instant(row, 2),
        TestReader.text(row, 3),
        new IndexedTest.Origin(
            row.getString(4),
            row.getString(5),
            row.getString(6),
            row.getLong(7),
            row.getString(8)));
  }

  List<LastVerdict> lastVerdicts(Instant end) throws SQLException {
    return session.list(
        "SELECT d.asset, d.verdict, max(d.happened_at) FROM documents d WHERE "
            + TEST
            + " AND d.voided IS NULL AND d.asset IS NOT NULL AND d.happened_at < ?"
            + " GROUP BY d.asset, d.verdict ORDER BY d.asset, d.verdict",
        row -> new LastVerdict(row.getString(1), row.getString(2), Instant.parse(row.getString(3))),
        Texts.of(end));
  }

  List<IndexedCalibration> calibrations(Optional<String> sensor) throws SQLException {
    return session.list(
        "SELECT d.id, d.sensor, d.happened_at, c.due_day, c.by_name"
            + " FROM calibrations c CROSS JOIN documents d"
            + " WHERE d.id = c.id AND d.voided IS NULL AND d.happened_at IS NOT NULL"
            + " AND d.sensor BETWEEN ? AND ? ORDER BY d.sensor, d.happened_at, d.id",
        row ->
            new IndexedCalibration(
                row.getString(1),
                row.getString(2),
                Instant.parse(row.getString(3)),
                TestReader.text(row, 4).map(LocalDate::parse),
                TestReader.text(row, 5)),
        sensor.orElse(""),
        sensor.orElse("\uDBFF\uDFFD"));
  }

  List<IndexedCorrection> corrections(String asset) throws SQLException {
    return session.list(
        "SELECT d.id, c.corrected_at, c.by_name, c.asset, c.note, c.voided, c.reason"
            + " FROM corrections c JOIN documents d ON d.digest = c.subject_digest"
            + " WHERE d.asset = ? ORDER BY c.corrected_at, c.number, c.id",
        Queries::correction,
        asset);
  }

  private static IndexedCorrection correction(ResultSet row) throws SQLException {
    int voided = row.getInt(6);
    Optional<Boolean> gone = row.wasNull() ? Optional.empty() : Optional.of(voided == 1);
    return new IndexedCorrection(
        row.getString(1),
        Instant.parse(row.getString(2)),
        TestReader.text(row, 3),
        new IndexedCorrection.Change(TestReader.text(row, 4), TestReader.text(row, 5), gone),
        TestReader.text(row, 7));
  }

  RecordsSummary summary(String base) throws SQLException {
    Map<String, Long> kinds = new HashMap<>();
    session.list(
        "SELECT kind, count(*) FROM documents GROUP BY kind",
        row -> kinds.put(row.getString(1), row.getLong(2)));
    List<KeptOut> out =
        session.list(
            "SELECT folder, name, kept_out FROM files WHERE kept_out IS NOT NULL"
                + " ORDER BY source, folder, name LIMIT "
                + MOST_TOLD,
            row -> new KeptOut(Entry.path(row.getString(1), row.getString(2)), row.getString(3)));
    return new RecordsSummary(
        base,
        new Schema(session).version(),
        kinds,
        session.count("SELECT count(*) FROM documents d WHERE voided IS NOT NULL AND " + TEST),
        new RecordsSummary.Out(
            session.count("SELECT count(*) FROM files WHERE kept_out IS NOT NULL"), out),
        session.list("SELECT name FROM sources ORDER BY name", row -> row.getString(1)));
  }
}
