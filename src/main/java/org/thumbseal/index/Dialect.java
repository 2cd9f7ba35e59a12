package org.thumbseal.index;

import java.util.List;

/** In what the two kinds of base differ. */
enum Dialect {
  /** One file; one writer at a time. */
  SQLITE("SELECT count(*) FROM sqlite_master WHERE type = 'table' AND name = ?", "BEGIN"),

  /** A server. */
  POSTGRESQL(
      "SELECT count(*) FROM information_schema.tables"
          + " WHERE table_schema = current_schema() AND table_name = ?",
      "BEGIN ISOLATION LEVEL REPEATABLE READ READ ONLY");

  private final String tableExists;
  private final String beginReading;

  Dialect(String tableExists, String beginReading) {
    this.tableExists = tableExists;
    this.beginReading = beginReading;
  }

  /** Counts the tables of a name. */
  String tableExists() {
    return tableExists;
  }

  /**
   * How a transaction begins that writes. On a server writers take turns by a lock of our own,
   * which goes with the transaction: what is written follows from what is there, and rows that are
   * locked in two orders would block each other.
   */
  List<String> beginWriting() {
    return switch (this) {
      case SQLITE -> List.of("BEGIN IMMEDIATE");
      case POSTGRESQL ->
          List.of(
              "BEGIN", "SELECT pg_advisory_xact_lock(hashtext(current_schema() || '.thumbseal'))");
    };
  }

  String beginReading() {
    return beginReading;
  }

  /** Text is compared byte by byte on both, whatever the language of the server. */
  String definition(String sql) {
    return this == SQLITE ? sql : sql.replaceAll("\\bTEXT\\b", "TEXT COLLATE \"C\"");
  }
}
