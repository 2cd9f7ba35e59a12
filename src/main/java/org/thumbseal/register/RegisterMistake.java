package org.thumbseal.register;

import java.util.Comparator;

/**
 * Something wrong in a register, or worth a look.
 *
 * @param row as a spreadsheet counts them: 1 is the header line, a cell with line breaks is in one
 *     row; 0 where it is not about a row
 * @param place which column, from 1; 0 where it is not about a column
 * @param column its name as it stands in the header line, or its letter where it has none; empty
 *     where it is not about a column
 * @param kind what kind of mistake
 * @param text what is wrong and what to do, in one line without row and column
 */
public record RegisterMistake(int row, int place, String column, Kind kind, String text)
    implements Comparable<RegisterMistake> {
  private static final Comparator<RegisterMistake> AS_READ =
      Comparator.comparingInt(RegisterMistake::row)
          .thenComparingInt(RegisterMistake::place)
          .thenComparing(RegisterMistake::kind)
          .thenComparing(RegisterMistake::text);

  /** Kinds of mistakes, and of what is only worth a look. */
  public enum Kind {
    UNREADABLE,
    TOO_LARGE,
    EMPTY_FILE,
    NOT_TEXT,
    UTF_16,
    NOT_UTF_8,
    NUL,
    UNCLOSED_QUOTE,
    AFTER_QUOTE,
    STRAY_QUOTE,
    MIXED_SEPARATORS,
    NO_HEADER,
    NO_ID_COLUMN,
    COLUMN_TWICE,
    CELL_COUNT,
    NAMELESS_CELL,
    SPACES,
    UNPRINTABLE,
    TOO_LONG,
    EMPTY_ID,
    ID_READ_OTHERWISE,
    DUPLICATE_ID,
    NOT_A_NUMBER,
    THOUSANDS,
    DECIMAL_SIGN,
    OUT_OF_RANGE,
    NOT_WHOLE,
    NOT_A_DATE,
    NO_SUCH_DATE,
    UNKNOWN_STATUS,
    CRITERIA_FILE,
    /** Only worth a look: two ids that a tired eye takes for one. */
    ALIKE_ID,
    /** Only worth a look: a column that was perhaps meant for one of ours. */
    ALIKE_COLUMN,
    /** Only worth a look: in service from a day to come. */
    TO_COME;

    /** Whether it is only worth a look, and the register is used all the same. */
    public boolean isWarning() {
      return compareTo(ALIKE_ID) >= 0;
    }
  }

  /** One line: where, and what. */
  public String line() {
    String where = row == 0 ? "" : "row " + row + (column.isEmpty() ? "" : ", " + column) + ": ";
    return where + text;
  }

  @Override
  public int compareTo(RegisterMistake other) {
    return AS_READ.compare(this, other);
  }
}
