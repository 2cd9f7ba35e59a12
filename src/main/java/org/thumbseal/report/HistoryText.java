package org.thumbseal.report;

import java.time.ZoneId;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import org.thumbseal.history.History;
import org.thumbseal.history.Kind;
import org.thumbseal.history.PastTest;
import org.thumbseal.history.Pump;

/** The tests of a pump as rows, and the whole as text for a terminal. */
public final class HistoryText {
  private HistoryText() {}

  /**
   * A test in words.
   *
   * @param date when
   * @param shown verdict, or {@code void}
   * @param values one of each kind, empty where it was not measured
   * @param remarks what was done and what else is to be known
   */
  record Row(String date, String shown, List<String> values, String remarks) {
    Row {
      values = List.copyOf(values);
    }
  }

  static List<String> columns() {
    return Stream.of("date", "verdict", "rise", "maximum", "speed", "remarks")
        .map(name -> Words.text("history.col." + name))
        .toList();
  }

  /** What the register knows of it. */
  static String known(Pump pump) {
    return Stream.of(pump.description(), pump.location())
        .flatMap(Optional::stream)
        .reduce((a, b) -> a + ", " + b)
        .orElse("");
  }

  /** Latest first. */
  static List<Row> rows(History history, Dates dates) {
    List<Row> rows = new ArrayList<>();
    Optional<PastTest> before = Optional.empty();
    for (PastTest test : history.tests()) {
      rows.add(
          0,
          new Row(
              test.at().map(dates::minute).orElseGet(() -> Words.text("undated")),
              test.outcome().shown(),
              Arrays.stream(Kind.values()).map(kind -> value(test, kind)).toList(),
              remarks(test, before)));
      before = Optional.of(test);
    }
    return rows;
  }

  private static String value(PastTest test, Kind kind) {
    return Optional.ofNullable(test.values().get(kind))
        .map(
            v ->
                Markup.number("%.2f", v.value())
                    + (v.expanded() > 0 ? " \u00b1 " + Markup.number("%.2f", v.expanded()) : "")
                    + " "
                    + kind.unit())
        .orElse("");
  }

  private static String remarks(PastTest test, Optional<PastTest> before) {
    List<String> said = new ArrayList<>();
    if (!test.setting().replaced().isEmpty()) {
      said.add(Words.text("history.replaced", String.join(", ", test.setting().replaced())));
    }
    test.outcome().voided().ifPresent(why -> said.add(Words.text("history.voided", why)));
    if (test.outcome().corrected() && test.outcome().voided().isEmpty()) {
      said.add(Words.text("history.corrected"));
    }
    test.outcome().note().ifPresent(said::add);
    before.ifPresent(b -> changed(test.setting(), b.setting(), said));
    return String.join("; ", said);
  }

  private static void changed(PastTest.Setting now, PastTest.Setting before, List<String> said) {
    if (!now.sensor().equals(before.sensor())) {
      said.add(Words.text("history.sensor", now.sensor()));
    }
    now.jar()
        .filter(litres -> !now.jar().equals(before.jar()))
        .ifPresent(litres -> said.add(Words.text("history.jar", Numbers.plain(litres))));
  }

  /**
   * The whole for a terminal.
   *
   * @param zone whose calendar the dates are of
   */
  public static List<String> lines(History history, ZoneId zone) {
    Dates dates = new Dates(zone);
    HistorySentences sentences = new HistorySentences(history, dates);
    List<String> lines = new ArrayList<>();
    lines.add(Words.text("history.title", history.pump().id()));
    if (!known(history.pump()).isEmpty()) {
      lines.add(known(history.pump()));
    }
    history.courses().forEach(course -> lines.addAll(sentences.of(course)));
    TextTable table =
        new TextTable(
            TextTable.Side.LEFT,
            TextTable.Side.LEFT,
            TextTable.Side.RIGHT,
            TextTable.Side.RIGHT,
            TextTable.Side.RIGHT,
            TextTable.Side.LEFT);
    table.row(columns().toArray(String[]::new));
    for (Row row : rows(history, dates)) {
      table.row(
          row.date(),
          Words.of("verdict", row.shown()),
          row.values().get(0),
          row.values().get(1),
          row.values().get(2),
          row.remarks());
    }
    lines.addAll(table.lines());
    return lines;
  }
}
