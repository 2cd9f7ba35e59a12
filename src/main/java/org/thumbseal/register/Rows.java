package org.thumbseal.register;

import de.siegmar.fastcsv.reader.CommentStrategy;
import de.siegmar.fastcsv.reader.CsvReader;
import de.siegmar.fastcsv.reader.CsvRecord;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.util.ArrayList;
import java.util.List;

/** The rows of a table, as a spreadsheet counts them. */
final class Rows {
  /**
   * One row.
   *
   * @param number from 1
   * @param cells without their quotes
   */
  record Row(int number, List<String> cells) {
    boolean isBlank() {
      return cells.stream().allMatch(String::isEmpty);
    }
  }

  private Rows() {}

  /** All of them, blank ones too; what is wrong with quotes and counts is looked for elsewhere. */
  static List<Row> of(String text, Separator separator) {
    List<Row> rows = new ArrayList<>();
    try (CsvReader<CsvRecord> reader = reader(text, separator)) {
      reader.forEach(r -> rows.add(new Row(rows.size() + 1, List.copyOf(r.getFields()))));
    } catch (IOException e) {
      throw new UncheckedIOException(e); // A text in memory gives none.
    }
    return rows;
  }

  private static CsvReader<CsvRecord> reader(String text, Separator separator) {
    return CsvReader.builder()
        .fieldSeparator(separator.sign())
        .quoteCharacter('"')
        .commentStrategy(CommentStrategy.NONE)
        .skipEmptyLines(false)
        .ignoreDifferentFieldCount(true)
        .acceptCharsAfterQuotes(true)
        .maxBufferSize(RegisterFile.LARGEST_BYTES + 1)
        .ofCsvRecord(text);
  }
}
