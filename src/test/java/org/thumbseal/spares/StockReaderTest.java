package org.thumbseal.spares;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.catchThrowableOfType;

import java.time.LocalDate;
import java.util.List;
import org.junit.jupiter.api.Test;

/** The stock file, read whole or refused. */
class StockReaderTest {
  private static final LocalDate TODAY = LocalDate.of(2026, 3, 31);
  private static final String HEADER =
      "part,item,quantity,counted_on,minimum,lead_days,pack,shelf\n";

  private static List<String> mistakes(String text) {
    StockRefused refused =
        catchThrowableOfType(StockRefused.class, () -> StockReader.read(text, TODAY));
    return refused.mistakes().stream().map(StockMistake::line).toList();
  }

  @Test
  void theTemplateIsReadAndUnknownColumnsAreKept() throws Exception {
    String text = String.join("\n", StockTemplate.lines());
    List<StockLine> lines = StockReader.read(text, TODAY);
    assertThat(lines).hasSize(5);
    assertThat(lines)
        .extracting(StockLine::item)
        .contains("filter", "tubing", "gasket", "catheter");
    assertThat(lines.get(0).others()).containsEntry("note", "hydrophobic");
    assertThat(StockReader.read(text.replace(',', ';'), TODAY)).isEqualTo(lines);
    assertThat(StockReader.read(text.replace(',', '\t'), TODAY)).isEqualTo(lines);
  }

  @Test
  void allMistakesAreSaidAtOnceByRowAndColumn() {
    assertThat(
            mistakes(
                HEADER
                    + "F,filter,-1,2026-02-30,3,14,0,A\n"
                    + "f ,,2,2026-04-01,x,731,1,\n"
                    + "G,gasket,2\n"))
        .containsExactly(
            "row 2, counted_on: '2026-02-30' is not a date as 2026-02-28",
            "row 2, pack: '0' is not a whole number from 1 to 1000000",
            "row 2, quantity: '-1' is not a whole number from 0 to 1000000",
            "row 3, counted_on: 2026-04-01 is still to come",
            "row 3, item: is empty",
            "row 3, lead_days: '731' is not a whole number from 0 to 730",
            "row 3, minimum: 'x' is not a whole number from 0 to 1000000",
            "row 3, part: 'f' is in row 2 too: put them into one row",
            "row 4: has 3 cells, the header line 8: a separator is missing or too many");
  }

  @Test
  void missingAndDoubleColumnsAreNamedOnce() {
    assertThat(mistakes("part,item,quantity,counted_on,minimum,Part\nF,filter,1,2026-01-01,1,\n"))
        .containsExactly(
            "row 1, Part: the column is there twice: take one out",
            "row 1, lead_days: there is no such column; 'thumbseal stock --template' shows all");
    assertThat(mistakes("")).isNotEmpty();
    assertThat(mistakes(HEADER)).containsExactly("has no parts in it");
    assertThat(mistakes(HEADER + "\"F\"x,filter,1,2026-01-01,1,1,1,\n")).hasSize(1);
    assertThat(mistakes(HEADER + "F,filter,1,2026-01-01,1,1,1,\"A\nG,gasket,1,2026-01-01,1,1,1,\n"))
        .containsExactly("a quote is never closed: close it; a quote in a cell is written twice");
  }
}
