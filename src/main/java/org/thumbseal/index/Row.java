package org.thumbseal.index;

import java.util.List;

/**
 * A row to be written.
 *
 * @param table where
 * @param values in the order of its columns; what is absent is an empty Optional
 */
record Row(Table table, List<Object> values) {
  Row {
    values = List.copyOf(values);
  }

  static Row of(Table table, Object... values) {
    return new Row(table, List.of(values));
  }
}
