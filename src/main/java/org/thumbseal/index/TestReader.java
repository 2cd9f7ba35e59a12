package org.thumbseal.index;

import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.Instant;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Stream;
import org.thumbseal.index.IndexedTest.Conditions;
import org.thumbseal.index.IndexedTest.Details;
import org.thumbseal.index.IndexedTest.IndexedCheck;
import org.thumbseal.index.IndexedTest.IndexedFinding;
import org.thumbseal.index.IndexedTest.Limits;
import org.thumbseal.index.IndexedTest.Origin;
import org.thumbseal.record.Standing;

/** Reads tests with all that belongs to them. */
final class TestReader {
  private static final String SELECT =
      "SELECT d.id, d.path, d.kid, d.sequence, d.digest, d.happened_at, d.asset, d.note, d.voided,"
          + " d.verdict, t.ambient_kpa, t.jar_l, d.sensor, t.calibration, t.criteria, t.rise_kpa,"
          + " t.rise_limit_s, t.maximum_limit_kpa, t.rated_l_min"
          + " FROM documents d JOIN tests t ON t.id = d.id WHERE ";

  private final Session session;
  private final Optional<List<String>> few;

  /**
   * @param few the only quantities that are wanted, and then of the checks what was replaced;
   *     absent for all there is
   */
  TestReader(Session session, Optional<List<String>> few) {
    this.session = session;
    this.few = few;
  }

  /** Those of which a condition on {@code d} and {@code t} is true, and in the order behind it. */
  List<IndexedTest> where(String condition, Object... values) throws SQLException {
    List<Bare> bare = session.list(SELECT + condition, Bare::read, values);
    List<String> ids = bare.stream().map(b -> b.origin().id()).toList();
    Lists lists = new Lists();
    for (Object[] chunk : Chunks.of(ids)) {
      readLists(lists, chunk);
    }
    return bare.stream().map(b -> b.with(lists.of(b.origin().id()))).toList();
  }

  private void readLists(Lists lists, Object[] chunk) throws SQLException {
    readQuantities(lists, chunk);
    readChecks(lists, chunk);
    if (few.isEmpty()) {
      readReasons(lists, chunk);
    }
  }

  private void readQuantities(Lists lists, Object[] chunk) throws SQLException {
    List<String> names = few.orElse(List.of());
    session.list(
        "SELECT id, name, value, unit, expanded, coverage, bound FROM quantities WHERE id IN "
            + Chunks.MARKS
            + (names.isEmpty() ? "" : " AND name IN (?" + ", ?".repeat(names.size() - 1) + ")"),
        row -> lists.quantities(row.getString(1)).put(row.getString(2), quantity(row)),
        Stream.concat(Stream.of(chunk), names.stream()).toArray());
  }

  private void readChecks(Lists lists, Object[] chunk) throws SQLException {
    session.list(
        "SELECT id, item, state, part, reason FROM checks WHERE id IN "
            + Chunks.MARKS
            + (few.isPresent() ? " AND state = 'replaced'" : "")
            + " ORDER BY id, place",
        row ->
            lists
                .checks(row.getString(1))
                .add(
                    new IndexedCheck(
                        row.getString(2), row.getString(3), text(row, 4), text(row, 5))),
        chunk);
  }

  private void readReasons(Lists lists, Object[] chunk) throws SQLException {
    session.list(
        "SELECT id, code FROM reasons WHERE id IN " + Chunks.MARKS + " ORDER BY id, place",
        row -> lists.reasons(row.getString(1)).add(row.getString(2)),
        chunk);
    session.list(
        "SELECT id, code, confidence FROM findings WHERE id IN "
            + Chunks.MARKS
            + " ORDER BY id, place",
        row ->
            lists
                .findings(row.getString(1))
                .add(new IndexedFinding(row.getString(2), row.getDouble(3))),
        chunk);
  }

  private static IndexedQuantity quantity(ResultSet row) throws SQLException {
    return new IndexedQuantity(
        row.getDouble(3), row.getString(4), number(row, 5), number(row, 6), text(row, 7));
  }

  static Optional<String> text(ResultSet row, int column) throws SQLException {
    return Optional.ofNullable(row.getString(column));
  }

  static Optional<Instant> instant(ResultSet row, int column) throws SQLException {
    return text(row, column).map(Instant::parse);
  }

  private static Optional<Double> number(ResultSet row, int column) throws SQLException {
    double value = row.getDouble(column);
    return row.wasNull() ? Optional.empty() : Optional.of(value);
  }

  /** A test without its lists. */
  private record Bare(
      Origin origin,
      Optional<Instant> startedAt,
      Standing standing,
      String verdict,
      Conditions conditions) {
    static Bare read(ResultSet row) throws SQLException {
      return new Bare(
          new Origin(
              row.getString(1),
              row.getString(2),
              row.getString(3),
              row.getLong(4),
              row.getString(5)),
          instant(row, 6),
          new Standing(text(row, 7), text(row, 8), text(row, 9)),
          row.getString(10),
          new Conditions(
              number(row, 11),
              number(row, 12),
              text(row, 13),
              text(row, 14),
              new Limits(
                  text(row, 15),
                  number(row, 16),
                  number(row, 17),
                  number(row, 18),
                  number(row, 19))));
    }

    IndexedTest with(Details details) {
      return new IndexedTest(origin, startedAt, standing, verdict, conditions, details);
    }
  }

  /** What belongs to tests, by their ids. */
  private static final class Lists {
    private final Map<String, Map<String, IndexedQuantity>> quantities = new HashMap<>();
    private final Map<String, List<String>> reasons = new HashMap<>();
    private final Map<String, List<IndexedFinding>> findings = new HashMap<>();
    private final Map<String, List<IndexedCheck>> checks = new HashMap<>();

    Map<String, IndexedQuantity> quantities(String id) {
      return quantities.computeIfAbsent(id, i -> new HashMap<>());
    }

    List<String> reasons(String id) {
      return reasons.computeIfAbsent(id, i -> new ArrayList<>());
    }

    List<IndexedFinding> findings(String id) {
      return findings.computeIfAbsent(id, i -> new ArrayList<>());
    }

    List<IndexedCheck> checks(String id) {
      return checks.computeIfAbsent(id, i -> new ArrayList<>());
    }

    Details of(String id) {
      return new Details(quantities(id), reasons(id), findings(id), checks(id));
    }
  }
}
