package org.thumbseal.spares;

import java.time.DateTimeException;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import org.thumbseal.spares.StockLine.Count;
import org.thumbseal.spares.StockLine.Supply;

/** Reads a stock file; every cell is looked at, whatever is wrong with others. */
public final class StockReader {
  private static final int MOST_PIECES = 1_000_000;
  private static final int LONGEST_LEAD = 730;

  private final List<StockMistake> mistakes = new ArrayList<>();
  private final Map<String, Integer> seen = new LinkedHashMap<>();
  private final LocalDate today;
  private final StockTable table;

  private StockReader(String text, LocalDate today) {
    this.today = today;
    this.table = StockTable.of(text, mistakes);
  }

  /**
   * Reads CSV by RFC 4180, or the same with semicolons or tabs.
   *
   * @param text without byte-order mark
   * @param today a count from a later day is a mistake
   * @return the lines in the order of the file
   * @throws StockRefused with all that is wrong in it; nothing is repaired
   */
  public static List<StockLine> read(String text, LocalDate today) throws StockRefused {
    StockReader reader = new StockReader(text, today);
    List<StockLine> lines = reader.lines();
    if (!reader.mistakes.isEmpty()) {
      throw new StockRefused(reader.mistakes);
    }
    return lines;
  }

  private List<StockLine> lines() {
    List<StockLine> lines = new ArrayList<>();
    for (int row = 2; row <= table.size(); row++) {
      if (table.row(row).stream().anyMatch(c -> !c.isBlank()) && isWhole(row)) {
        lines.add(line(row));
      }
    }
    if (lines.isEmpty() && mistakes.isEmpty()) {
      mistakes.add(new StockMistake(0, "", "has no parts in it"));
    }
    return lines;
  }

  private boolean isWhole(int row) {
    int cells = table.row(row).size();
    int titles = table.titles().size();
    if (cells != titles) {
      String text =
          "has "
              + cells
              + " cells, the header line "
              + titles
              + ": a separator is missing or too many";
      mistakes.add(new StockMistake(row, "", text));
    }
    return cells == titles;
  }

  private StockLine line(int row) {
    return new StockLine(
        part(row),
        words(row, Column.ITEM).toLowerCase(Locale.ROOT),
        new Count(whole(row, Column.QUANTITY, 0, MOST_PIECES), countedOn(row)),
        new Supply(
            whole(row, Column.MINIMUM, 0, MOST_PIECES),
            whole(row, Column.LEAD_DAYS, 0, LONGEST_LEAD),
            orElse(row, Column.PACK, 1),
            orElse(row, Column.ON_ORDER, 0)),
        perMonth(row),
        others(row));
  }

  private String part(int row) {
    String part = words(row, Column.PART);
    Integer before = part.isEmpty() ? null : seen.putIfAbsent(Matching.name(part), row);
    if (before != null) {
      no(row, Column.PART, "'" + part + "' is in row " + before + " too: put them into one row");
    }
    return part;
  }

  private String words(int row, Column column) {
    String text = table.cell(row, column);
    if (text.isEmpty() && table.has(column)) {
      no(row, column, "is empty");
    } else if (text.codePoints().anyMatch(Character::isISOControl)) {
      no(row, column, "has a line break or other characters that cannot be seen");
    }
    return text;
  }

  private int orElse(int row, Column column, int otherwise) {
    return table.cell(row, column).isEmpty()
        ? otherwise
        : whole(row, column, otherwise, MOST_PIECES);
  }

  private int whole(int row, Column column, int least, int most) {
    String text = table.cell(row, column);
    boolean isNumber = text.matches("[0-9]{1,9}");
    int value = isNumber ? Integer.parseInt(text) : least;
    if (table.has(column) && (!isNumber || value < least || value > most)) {
      no(row, column, "'" + text + "' is not a whole number from " + least + " to " + most);
    }
    return value;
  }

  private LocalDate countedOn(int row) {
    String text = table.cell(row, Column.COUNTED_ON);
    try {
      LocalDate day = LocalDate.parse(text);
      if (day.isAfter(today)) {
        no(row, Column.COUNTED_ON, day + " is still to come");
      }
      return day;
    } catch (DateTimeException e) {
      if (table.has(Column.COUNTED_ON)) {
        no(row, Column.COUNTED_ON, "'" + text + "' is not a date as 2026-02-28");
      }
      return today;
    }
  }

  private Optional<Double> perMonth(int row) {
    String text = table.cell(row, Column.USED_PER_MONTH);
    if (text.isEmpty()) {
      return Optional.empty();
    } else if (!text.matches("[0-9]{1,6}([.,][0-9]{1,2})?")) {
      no(row, Column.USED_PER_MONTH, "'" + text + "' is not a number such as 2.5");
      return Optional.empty();
    }
    return Optional.of(Double.parseDouble(text.replace(',', '.')));
  }

  private Map<String, String> others(int row) {
    Map<String, String> others = new LinkedHashMap<>();
    for (int i = 0; i < table.titles().size(); i++) {
      String title = table.titles().get(i).strip();
      if (table.others().contains(title) && !table.row(row).get(i).isEmpty()) {
        others.put(title, table.row(row).get(i));
      }
    }
    return others;
  }

  private void no(int row, Column column, String text) {
    mistakes.add(new StockMistake(row, column.title(), text));
  }
}
