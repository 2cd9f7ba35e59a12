package org.thumbseal.index;

import java.util.ArrayList;
import java.util.Collection;
import java.util.List;

/** Lists of values in pieces of one size, so that few statements have to be prepared. */
final class Chunks {
  private static final int SIZE = 50;

  /** What stands behind IN for one piece. */
  static final String MARKS = "(" + "?, ".repeat(SIZE - 1) + "?)";

  private Chunks() {}

  /** Pieces that are full: the last value of all is repeated. */
  static List<Object[]> of(Collection<String> values) {
    List<String> all = List.copyOf(values);
    List<Object[]> chunks = new ArrayList<>();
    for (int from = 0; from < all.size(); from += SIZE) {
      Object[] chunk = new Object[SIZE];
      for (int i = 0; i < SIZE; i++) {
        chunk[i] = all.get(Math.min(from + i, all.size() - 1));
      }
      chunks.add(chunk);
    }
    return chunks;
  }
}
