package org.thumbseal.index;

import java.sql.SQLException;
import java.util.function.Consumer;

/** The tables in a base: made where there are none, made anew where they are older. */
final class Schema {
  /** Raised with each change of the tables, or of what is written into them. */
  static final int VERSION = 2;

  private static final String VERSION_TABLE = Table.THUMBSEAL_SCHEMA.sql();

  private final Session session;

  Schema(Session session) {
    this.session = session;
  }

  /**
   * Makes sure of the tables of this version.
   *
   * @param remarks is told when what was there was thrown away
   * @throws RecordsException if a newer program has made them
   */
  void prepare(Consumer<String> remarks) throws SQLException, RecordsException {
    if (version() == VERSION) {
      return;
    }
    session.write(
        () -> {
          int there = version();
          if (there > VERSION) {
            throw RecordsException.mistake(
                "the records base was made by a newer program (version "
                    + there
                    + "); use that program, or name another base with --records");
          }
          if (there >= 0 && there < VERSION) {
            remarks.accept("the records base was of an older version; it is made anew");
            drop();
          }
          if (there < VERSION) {
            create();
          }
          return there;
        });
  }

  /** -1 where there are no tables. */
  int version() throws SQLException {
    if (session.count(session.dialect().tableExists(), VERSION_TABLE) == 0) {
      return -1;
    }
    return (int) session.count("SELECT COALESCE(max(version), 0) FROM " + VERSION_TABLE);
  }

  private void create() throws SQLException {
    for (Table table : Table.all()) {
      session.execute(session.dialect().definition(table.create()));
    }
    for (String index : Table.INDEXES) {
      session.execute(index);
    }
    session.run(Table.THUMBSEAL_SCHEMA.insert(), VERSION);
  }

  private void drop() throws SQLException {
    for (Table table : Table.all()) {
      session.execute("DROP TABLE IF EXISTS " + table.sql());
    }
  }
}
