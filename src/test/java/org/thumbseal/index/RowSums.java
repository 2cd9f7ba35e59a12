package org.thumbseal.index;

import java.nio.ByteBuffer;
import java.nio.charset.StandardCharsets;
import java.security.MessageDigest;
import java.util.Locale;
import java.util.Map;
import java.util.TreeMap;

/**
 * All rows of an index in a few numbers, for millions of them and whatever base they lie in: of
 * each table how many there are, and the sum of 128 bits of SHA-256 of each row.
 */
final class RowSums {
  /** Rows of so many ids at a time, for a driver that would hold all. */
  private static final int STEP = 2048;

  private final MessageDigest digest = MessageDigest.getInstance("SHA-256");

  private RowSums() throws Exception {}

  /** By table, of all ids below a number in hexadecimal. */
  static Map<String, String> of(RecordsAddress address, int end) throws Exception {
    RowSums sums = new RowSums();
    Map<String, String> all = new TreeMap<>();
    try (Session session = Base.open(address, Map.of())) {
      for (Table table : Table.CONTENT) {
        all.put(table.sql(), sums.table(session, table, end));
      }
    }
    return all;
  }

  private String table(Session session, Table table, int end) throws Exception {
    String sql =
        "SELECT "
            + String.join(", ", table.columns())
            + " FROM "
            + table.sql()
            + " WHERE id >= ? AND id < ?";
    long[] sum = new long[3];
    for (int from = 0; from <= end; from += STEP) {
      session.list(
          sql,
          row -> {
            add(sum, IndexDump.line(table.sql(), table.columns().size(), row));
            return sum;
          },
          hex(from),
          hex(from + STEP));
    }
    return String.format(Locale.ROOT, "%d rows, %016x%016x", sum[0], sum[1], sum[2]);
  }

  private static String hex(int number) {
    return String.format(Locale.ROOT, "%08x", number);
  }

  private void add(long[] sum, String row) {
    ByteBuffer bytes = ByteBuffer.wrap(digest.digest(row.getBytes(StandardCharsets.UTF_8)));
    sum[0]++;
    sum[1] += bytes.getLong();
    sum[2] += bytes.getLong();
  }
}
