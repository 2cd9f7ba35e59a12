package org.thumbseal.accuracy;

import java.util.ArrayList;
import java.util.List;
import java.util.function.Function;
import org.thumbseal.accuracy.Row.Outcome;

/**
 * What must be, what is, and whether that is enough.
 *
 * @param title what it was measured on
 * @param rows in the order of the bars
 * @param notes lines below the table, such as a matrix
 */
public record AccuracyTable(String title, List<Row> rows, List<String> notes) {
  private static final List<Column> COLUMNS =
      List.of(
          new Column("what", Row::what),
          new Column("must", Row::must),
          new Column("measured", Row::measured),
          new Column("", row -> row.outcome().text()));

  private record Column(String head, Function<Row, String> cell) {
    int width(List<Row> rows) {
      int widest = rows.stream().mapToInt(r -> cell.apply(r).length()).max().orElse(0);
      return Math.max(widest, Math.max(head.length(), 3));
    }
  }

  /** Keeps copies. */
  public AccuracyTable {
    rows = List.copyOf(rows);
    notes = List.copyOf(notes);
  }

  /** Whether no bar was missed. */
  public boolean isMet() {
    return rows.stream().noneMatch(r -> r.outcome() == Outcome.NOT_MET);
  }

  /** The table as lines of text, in the form of a Markdown table. */
  public List<String> lines() {
    List<String> lines = new ArrayList<>(List.of(title, ""));
    lines.add(line(c -> c.head()));
    lines.add(line(c -> "-".repeat(c.width(rows))));
    rows.forEach(row -> lines.add(line(c -> c.cell().apply(row))));
    if (!notes.isEmpty()) {
      lines.add("");
      lines.addAll(notes);
    }
    return lines;
  }

  private String line(Function<Column, String> cell) {
    StringBuilder line = new StringBuilder("|");
    for (Column column : COLUMNS) {
      String text = cell.apply(column);
      line.append(' ').append(text).append(" ".repeat(column.width(rows) - text.length()));
      line.append(" |");
    }
    return line.toString();
  }
}
