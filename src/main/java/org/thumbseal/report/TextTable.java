package org.thumbseal.report;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;

/** A table of plain characters; a column is as wide as its widest cell. */
final class TextTable {
  private static final String INDENT = "    ";
  private static final int WIDTH = 100;

  /** How a column stands. */
  enum Side {
    LEFT,
    RIGHT
  }

  private final List<Side> sides;
  private final List<List<String>> rows = new ArrayList<>();

  TextTable(Side... sides) {
    this.sides = List.of(sides);
  }

  TextTable row(String... cells) {
    rows.add(List.of(cells));
    return this;
  }

  /** A line as long as the table. */
  TextTable rule() {
    rows.add(List.of());
    return this;
  }

  /** The lines, indented; the columns stand closer together where they would be too wide. */
  List<String> lines() {
    int[] widths = new int[sides.size()];
    for (List<String> row : rows) {
      for (int i = 0; i < row.size(); i++) {
        widths[i] = Math.max(widths[i], row.get(i).length());
      }
    }
    int cells = Arrays.stream(widths).sum();
    int gaps = widths.length - 1;
    int gap = INDENT.length() + cells + 3 * gaps <= WIDTH ? 3 : 2;
    String rule = "-".repeat(cells + gap * gaps);
    return rows.stream()
        .map(row -> INDENT + (row.isEmpty() ? rule : line(row, widths, " ".repeat(gap))))
        .toList();
  }

  private String line(List<String> row, int[] widths, String gap) {
    List<String> cells = new ArrayList<>();
    for (int i = 0; i < row.size(); i++) {
      String space = " ".repeat(widths[i] - row.get(i).length());
      cells.add(sides.get(i) == Side.LEFT ? row.get(i) + space : space + row.get(i));
    }
    return String.join(gap, cells).stripTrailing();
  }
}
