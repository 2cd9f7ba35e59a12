package org.thumbseal.spares;

import de.siegmar.fastcsv.reader.CommentStrategy;
import de.siegmar.fastcsv.reader.CsvParseException;
import de.siegmar.fastcsv.reader.CsvReader;
import de.siegmar.fastcsv.reader.CsvRecord;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.HashSet;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Set;

/** The rows of a stock file and what its columns are called. */
final class StockTable {
  private final List<List<String>> rows = new ArrayList<>();
  private final List<StockMistake> mistakes;
  private final Map<Column, Integer> columns = new EnumMap<>(Column.class);

  private StockTable(List<StockMistake> mistakes) {
    this.mistakes = mistakes;
  }

  static StockTable of(String text, List<StockMistake> mistakes) {
    StockTable table = new StockTable(mistakes);
    table.requireClosedQuotes(text);
    table.readRows(text);
    table.readTitles();
    return table;
  }

  /** A quote that is never closed would swallow the rows below it. */
  private void requireClosedQuotes(String text) {
    if (count(text, '"') % 2 != 0) {
      mistakes.add(
          new StockMistake(
              0, "", "a quote is never closed: close it; a quote in a cell is written twice"));
    }
  }

  private void readRows(String text) {
    try (CsvReader<CsvRecord> reader =
        CsvReader.builder()
            .fieldSeparator(separator(text))
            .commentStrategy(CommentStrategy.NONE)
            .skipEmptyLines(false)
            .ignoreDifferentFieldCount(true)
            .acceptCharsAfterQuotes(false)
            .ofCsvRecord(text)) {
      reader.forEach(r -> rows.add(List.copyOf(r.getFields())));
    } catch (CsvParseException e) {
      int row = rows.size() + 1;
      mistakes.add(
          new StockMistake(
              row,
              "",
              "a quote is not as CSV has it: a quote inside a quoted cell is written twice"));
    } catch (IOException e) {
      throw new UncheckedIOException(e); // A text in memory gives none.
    }
  }

  /**
   * The sign that is in the header line most often: spreadsheets of some locales write ; or tab.
   */
  private static char separator(String text) {
    String header = text.lines().findFirst().orElse("");
    char best = ',';
    for (char sign : new char[] {';', '\t'}) {
      best = count(header, sign) > count(header, best) ? sign : best;
    }
    return best;
  }

  private static long count(String text, char sign) {
    return text.chars().filter(c -> c == sign).count();
  }

  private void readTitles() {
    Set<String> seen = new HashSet<>();
    for (int i = 0; i < titles().size(); i++) {
      String title = titles().get(i).strip();
      if (!title.isEmpty() && !seen.add(title.toLowerCase(Locale.ROOT))) {
        mistakes.add(new StockMistake(1, title, "the column is there twice: take one out"));
      }
      int index = i;
      Column.of(title).ifPresent(c -> columns.putIfAbsent(c, index));
    }
    for (Column column : Column.values()) {
      if (column.isRequired() && !columns.containsKey(column)) {
        mistakes.add(
            new StockMistake(
                1,
                column.title(),
                "there is no such column; 'thumbseal stock --template' shows all"));
      }
    }
  }

  List<String> titles() {
    return rows.isEmpty() ? List.of() : rows.get(0);
  }

  boolean has(Column column) {
    return columns.containsKey(column);
  }

  int size() {
    return rows.size();
  }

  /** A row from 1, the header line. */
  List<String> row(int number) {
    return rows.get(number - 1);
  }

  /** A cell; empty where the file has no such column. */
  String cell(int row, Column column) {
    Integer index = columns.get(column);
    return index == null ? "" : row(row).get(index).strip();
  }

  /** Names of the columns that are only kept. */
  List<String> others() {
    return titles().stream()
        .map(String::strip)
        .filter(t -> Column.of(t).isEmpty() && !t.isEmpty())
        .toList();
  }
}
