package org.thumbseal.register;

/**
 * A cell.
 *
 * @param row from 1, the header line
 * @param column from 1
 * @param title name of the column
 */
record Place(int row, int column, String title) {
  /** A column without a name, by its letter in a spreadsheet: A to Z, AA ... */
  static Place unnamed(int row, int column) {
    StringBuilder letters = new StringBuilder();
    for (int rest = column; rest > 0; rest = (rest - 1) / 26) {
      letters.insert(0, (char) ('A' + (rest - 1) % 26));
    }
    return new Place(row, column, "column " + letters);
  }
}
