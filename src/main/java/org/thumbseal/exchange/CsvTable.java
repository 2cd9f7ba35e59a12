package org.thumbseal.exchange;

import de.siegmar.fastcsv.writer.CsvWriter;
import de.siegmar.fastcsv.writer.LineDelimiter;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.io.Writer;
import java.util.List;

/** A row for each result (RFC 4180). */
public final class CsvTable implements ResultTable {
  private final Layout layout;
  private final CsvWriter csv;

  /**
   * Writes the headings.
   *
   * @throws IOException if they cannot be written
   */
  public CsvTable(Layout layout, Writer out) throws IOException {
    this.layout = layout;
    if (layout.style().byteOrderMark()) {
      out.write('\uFEFF');
    }
    this.csv =
        CsvWriter.builder()
            .fieldSeparator(layout.style().separator())
            .lineDelimiter(LineDelimiter.CRLF)
            .build(out);
    row(layout.fields().stream().map(Field::heading).toList());
  }

  @Override
  public void result(SealedResult sealed, FlatResult flat) throws IOException {
    row(layout.fields().stream().map(field -> cell(field, flat)).toList());
  }

  private String cell(Field field, FlatResult flat) {
    return field.text(flat).map(text -> cell(field, text)).orElse("");
  }

  private String cell(Field field, String text) {
    return field.kind().isNumber()
        ? text.replace('.', layout.style().decimal())
        : SpreadsheetText.of(text);
  }

  private void row(List<String> cells) throws IOException {
    try {
      csv.writeRecord(cells);
    } catch (UncheckedIOException e) {
      throw e.getCause();
    }
  }

  @Override
  public void end() throws IOException {
    csv.flush();
  }
}
