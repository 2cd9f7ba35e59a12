package org.thumbseal.spares;

import java.util.Comparator;

/**
 * Something wrong in a stock file.
 *
 * @param row as a spreadsheet counts them: 1 is the header line; 0 where it is about the file
 * @param column name of the column; empty where it is about the row or the file
 * @param text what is wrong and what to do, without row and column
 */
public record StockMistake(int row, String column, String text)
    implements Comparable<StockMistake> {
  private static final Comparator<StockMistake> AS_READ =
      Comparator.comparingInt(StockMistake::row)
          .thenComparing(StockMistake::column)
          .thenComparing(StockMistake::text);

  /** One line: where, and what. */
  public String line() {
    return row == 0 ? text : "row " + row + (column.isEmpty() ? "" : ", " + column) + ": " + text;
  }

  @Override
  public int compareTo(StockMistake other) {
    return AS_READ.compare(this, other);
  }
}
