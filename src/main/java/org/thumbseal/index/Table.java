package org.thumbseal.index;

import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.stream.Collectors;

/**
 * The tables; their columns are documented in {@code src/docs/records.md}. Instants are RFC 3339 in
 * UTC with milliseconds, so that text sorts as time; yes and no are 1 and 0.
 */
enum Table {
  THUMBSEAL_SCHEMA("version INTEGER NOT NULL"),
  SOURCES("source INTEGER PRIMARY KEY", "name TEXT NOT NULL UNIQUE", "head TEXT NOT NULL"),
  FOLDERS(
      "source INTEGER NOT NULL",
      "folder TEXT NOT NULL",
      "changed BIGINT NOT NULL",
      "PRIMARY KEY (source, folder)"),
  TRUSTED(
      "source INTEGER NOT NULL",
      "kid TEXT NOT NULL",
      "bounds TEXT NOT NULL",
      "PRIMARY KEY (source, kid)"),
  FILES(
      "source INTEGER NOT NULL",
      "folder TEXT NOT NULL",
      "name TEXT NOT NULL",
      "kid TEXT",
      "id TEXT",
      "digest TEXT",
      "kept_out TEXT",
      "PRIMARY KEY (source, folder, name)"),
  DOCUMENTS(
      "id TEXT PRIMARY KEY",
      "kind TEXT NOT NULL",
      "happened_at TEXT",
      "asset TEXT",
      "verdict TEXT",
      "voided TEXT",
      "note TEXT",
      "corrected_at TEXT",
      "corrected_by TEXT",
      "corrections INTEGER NOT NULL",
      "asset_sealed TEXT",
      "sensor TEXT",
      "path TEXT NOT NULL",
      "kid TEXT NOT NULL",
      "sequence BIGINT NOT NULL",
      "digest TEXT NOT NULL"),
  TESTS(
      "id TEXT PRIMARY KEY",
      "occluded_s DOUBLE PRECISION",
      "started_by TEXT",
      "ambient_kpa DOUBLE PRECISION",
      "ambient_from TEXT",
      "jar_l DOUBLE PRECISION",
      "calibration TEXT",
      "criteria TEXT",
      "rise_kpa DOUBLE PRECISION",
      "rise_limit_s DOUBLE PRECISION",
      "maximum_limit_kpa DOUBLE PRECISION",
      "open_limit_kpa DOUBLE PRECISION",
      "rated_l_min DOUBLE PRECISION",
      "altitude_factor DOUBLE PRECISION",
      "capture_sha256 TEXT",
      "leak_search TEXT"),
  QUANTITIES(
      "id TEXT NOT NULL",
      "name TEXT NOT NULL",
      "value DOUBLE PRECISION NOT NULL",
      "unit TEXT NOT NULL",
      "expanded DOUBLE PRECISION",
      "coverage DOUBLE PRECISION",
      "bound TEXT",
      "PRIMARY KEY (id, name)"),
  REASONS(
      "id TEXT NOT NULL",
      "place INTEGER NOT NULL",
      "code TEXT NOT NULL",
      "PRIMARY KEY (id, place)"),
  FINDINGS(
      "id TEXT NOT NULL",
      "place INTEGER NOT NULL",
      "code TEXT NOT NULL",
      "confidence DOUBLE PRECISION NOT NULL",
      "PRIMARY KEY (id, place)"),
  CHECKS(
      "id TEXT NOT NULL",
      "place INTEGER NOT NULL",
      "item TEXT NOT NULL",
      "state TEXT NOT NULL",
      "part TEXT",
      "reason TEXT",
      "PRIMARY KEY (id, place)"),
  CORRECTIONS(
      "id TEXT PRIMARY KEY",
      "subject TEXT NOT NULL",
      "subject_digest TEXT NOT NULL",
      "number BIGINT NOT NULL",
      "corrected_at TEXT NOT NULL",
      "by_name TEXT",
      "asset TEXT",
      "note TEXT",
      "voided INTEGER",
      "reason TEXT"),
  INSPECTIONS(
      "id TEXT PRIMARY KEY",
      "work TEXT NOT NULL",
      "on_day TEXT NOT NULL",
      "in_order INTEGER",
      "by_name TEXT"),
  CALIBRATIONS(
      "id TEXT PRIMARY KEY",
      "due_day TEXT",
      "by_name TEXT",
      "reference TEXT",
      "certificate TEXT",
      "gain DOUBLE PRECISION",
      "gain_expanded DOUBLE PRECISION",
      "offset_kpa DOUBLE PRECISION");

  /** Tables of what documents say, the part that is the same however an index came about. */
  static final List<Table> CONTENT =
      List.of(
          DOCUMENTS,
          TESTS,
          QUANTITIES,
          REASONS,
          FINDINGS,
          CHECKS,
          CORRECTIONS,
          INSPECTIONS,
          CALIBRATIONS);

  /** What is looked for, beyond primary keys. */
  static final List<String> INDEXES =
      List.of(
          "CREATE INDEX documents_asset ON documents (asset, kind, happened_at)",
          // All that last verdicts need, so that no row of them is looked up.
          "CREATE INDEX documents_verdict ON documents"
              + " (kind, asset, verdict, happened_at, voided)",
          "CREATE INDEX documents_time ON documents (kind, COALESCE(happened_at, ''), id)",
          "CREATE INDEX documents_digest ON documents (digest)",
          "CREATE INDEX documents_sensor ON documents (sensor) WHERE kind = 'calibration'",
          "CREATE INDEX files_id ON files (id)",
          "CREATE INDEX files_kept_out ON files (source, folder, name)"
              + " WHERE kept_out IS NOT NULL",
          "CREATE INDEX checks_replaced ON checks (id) WHERE state = 'replaced'",
          "CREATE INDEX corrections_subject ON corrections (subject_digest)");

  /** Made by {@code List.of}, which nothing changes. */
  @SuppressWarnings("ImmutableEnumChecker")
  private final List<String> definition;

  Table(String... definition) {
    this.definition = List.of(definition);
  }

  /** As SQL says it. */
  String sql() {
    return name().toLowerCase(Locale.ROOT);
  }

  /** Names of the columns in order. */
  List<String> columns() {
    return definition.stream()
        .map(line -> line.substring(0, line.indexOf(' ')))
        .filter(word -> !word.equals("PRIMARY"))
        .toList();
  }

  String create() {
    return "CREATE TABLE " + sql() + " (" + String.join(", ", definition) + ")";
  }

  String insert() {
    String marks = columns().stream().map(c -> "?").collect(Collectors.joining(", "));
    return "INSERT INTO "
        + sql()
        + " ("
        + String.join(", ", columns())
        + ") VALUES ("
        + marks
        + ")";
  }

  static List<Table> all() {
    return Arrays.asList(values());
  }
}
