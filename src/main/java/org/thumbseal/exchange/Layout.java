package org.thumbseal.exchange;

import java.util.List;

/**
 * The columns of a file and how they are written.
 *
 * @param fields in order
 * @param style of a CSV file
 */
public record Layout(List<Field> fields, Style style) {
  /** Every column under its own name, as RFC 4180 has it. */
  public static final Layout OWN = new Layout(Field.all(), new Style(',', '.', false));

  /** Keeps a copy of the fields. */
  public Layout {
    fields = List.copyOf(fields);
  }

  /**
   * How a CSV file is written.
   *
   * @param separator between two fields
   * @param decimal the decimal point
   * @param byteOrderMark whether the file begins with one, by which some spreadsheets know UTF-8
   */
  public record Style(char separator, char decimal, boolean byteOrderMark) {}

  /** Whether a void result can be told from others in it. */
  boolean showsVoid() {
    return has(Column.COUNTS) || has(Column.VOID_REASON);
  }

  /** Whether a result without a trusted seal can be told from others in it. */
  public boolean showsSeal() {
    return has(Column.SEAL);
  }

  private boolean has(Column column) {
    return fields.stream()
        .anyMatch(f -> f instanceof Field.Taken taken && taken.column() == column);
  }
}
