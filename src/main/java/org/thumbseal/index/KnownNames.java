package org.thumbseal.index;

import java.nio.ByteBuffer;
import java.nio.charset.StandardCharsets;
import java.sql.SQLException;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.BitSet;
import java.util.HexFormat;
import java.util.List;
import java.util.function.Consumer;
import org.thumbseal.seal.Sha256;

/**
 * The names of a folder's files that the index knows, and which of them were seen again. Nine bytes
 * of memory each: names are held by the first 64 bits of their SHA-256, which do not meet by
 * chance.
 */
final class KnownNames {
  private static final String PAGE =
      "SELECT name FROM files WHERE source = ? AND folder = ? AND name > ? ORDER BY name"
          + " LIMIT 5000";

  private final Session session;
  private final long source;
  private final String folder;
  private final BitSet seen = new BitSet();
  private long[] marks = new long[0];

  private KnownNames(Session session, long source, String folder) {
    this.session = session;
    this.source = source;
    this.folder = folder;
  }

  static KnownNames of(Session session, long source, String folder) throws SQLException {
    KnownNames names = new KnownNames(session, source, folder);
    long count =
        session.count("SELECT count(*) FROM files WHERE source = ? AND folder = ?", source, folder);
    long[] marks = new long[Math.toIntExact(count)];
    int[] at = {0};
    names.forEach(
        name -> {
          if (at[0] < marks.length) {
            marks[at[0]++] = mark(name);
          }
        });
    names.marks = Arrays.copyOf(marks, at[0]);
    Arrays.sort(names.marks);
    return names;
  }

  /** Whether the name is known; it counts as seen from now on. */
  boolean see(String name) {
    int place = Arrays.binarySearch(marks, mark(Texts.clean(name)));
    if (place >= 0) {
      seen.set(place);
    }
    return place >= 0;
  }

  /** Those that were not seen, 5000 at most at a time. */
  List<String> unseen() throws SQLException {
    List<String> unseen = new ArrayList<>();
    if (seen.cardinality() < marks.length) {
      forEach(
          name -> {
            int place = Arrays.binarySearch(marks, mark(name));
            if (place >= 0 && !seen.get(place)) {
              unseen.add(name);
            }
          });
    }
    return unseen;
  }

  private void forEach(Consumer<String> visitor) throws SQLException {
    String last = "";
    List<String> page;
    do {
      page = session.list(PAGE, row -> row.getString(1), source, folder, last);
      page.forEach(visitor);
      last = page.isEmpty() ? last : page.get(page.size() - 1);
    } while (!page.isEmpty());
  }

  private static long mark(String name) {
    String digest = Sha256.hex(name.getBytes(StandardCharsets.UTF_8)).substring(0, 16);
    return ByteBuffer.wrap(HexFormat.of().parseHex(digest)).getLong();
  }
}
