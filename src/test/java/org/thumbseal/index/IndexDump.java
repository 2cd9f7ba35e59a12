package org.thumbseal.index;

import java.sql.ResultSet;
import java.sql.SQLException;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Map;

/** Everything that an index says of its documents, row by row, whichever way it came about. */
final class IndexDump {
  private IndexDump() {}

  static List<String> of(RecordsAddress address) throws Exception {
    List<String> lines = new ArrayList<>();
    try (Session session = Base.open(address, Map.of())) {
      for (Table table : Table.CONTENT) {
        String columns = String.join(", ", table.columns());
        session.list(
            "SELECT " + columns + " FROM " + table.sql(),
            row -> lines.add(line(table.sql(), table.columns().size(), row)));
      }
      session.list(
          "SELECT folder, name, kid, id, digest, kept_out FROM files",
          row -> lines.add(line("files", 6, row)));
    }
    Collections.sort(lines);
    return lines;
  }

  /** Rows of one and not of the other; a row that is there twice counts twice. */
  static List<String> difference(List<String> one, List<String> other) {
    List<String> difference = new ArrayList<>();
    List<String> left = new ArrayList<>(other);
    for (String row : one) {
      if (!left.remove(row)) {
        difference.add("- " + row);
      }
    }
    left.forEach(row -> difference.add("+ " + row));
    return difference;
  }

  static String line(String table, int columns, ResultSet row) throws SQLException {
    StringBuilder line = new StringBuilder(table);
    for (int i = 1; i <= columns; i++) {
      Object value = row.getObject(i);
      line.append(" | ").append(value instanceof Number n ? plain(n) : value);
    }
    return line.toString();
  }

  /** One base gives an int where the other gives a long. */
  private static String plain(Number number) {
    return number instanceof Double ? number.toString() : Long.toString(number.longValue());
  }
}
