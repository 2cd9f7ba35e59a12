package org.thumbseal.register;

import java.time.LocalDate;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import org.thumbseal.grade.Criteria;
import org.thumbseal.register.RegisterMistake.Kind;
import org.thumbseal.register.RegisteredAsset.Intervals;
import org.thumbseal.register.RegisteredAsset.Label;
import org.thumbseal.register.RowCells.Range;
import org.thumbseal.register.Rows.Row;

/** Reads the text of a register; every row and cell is looked at, whatever is wrong with others. */
final class RegisterReader {
  private static final Range JAR = new Range(0.05, 50, "L");
  private static final Range RATED = new Range(0.1, 1000, "L/min");
  private static final Range MONTHS = new Range(1, 120, "months");

  private final Separator separator;

  private final Mistakes mistakes;
  private final CriteriaFiles criteria;
  private final LocalDate today;
  private final List<Row> rows;
  private final Header header;
  private final DecimalNumbers numbers;
  private final Ids ids;

  RegisterReader(String text, CriteriaFiles criteria, LocalDate today, Mistakes mistakes) {
    this.mistakes = mistakes;
    this.criteria = criteria;
    this.today = today;
    this.separator = Separator.of(RegisterText.firstLine(text));
    this.rows = Rows.of(text, separator);
    this.header = Header.of(rows, mistakes);
    this.numbers = new DecimalNumbers(separator, mistakes);
    this.ids = new Ids(mistakes);
    mixedHeader(RegisterText.firstLine(text));
    quotes(text);
  }

  /** What stands in it; only to be used where no mistake was found. */
  Register read() {
    Set<Integer> unclear = mistakes.rows();
    Map<String, RegisteredAsset> assets = new LinkedHashMap<>();
    rows.forEach(this::noNul);
    if (header.hasId()) {
      rows.stream()
          .skip(1)
          .filter(row -> !row.isBlank() && !unclear.contains(row.number()) && isWhole(row))
          .map(this::asset)
          .forEach(a -> assets.put(a.id(), a));
    }
    List<String> others = header.others().map(i -> header.titles().get(i - 1)).toList();
    List<RegisterMistake> warnings =
        mistakes.sorted().stream().filter(m -> m.kind().isWarning()).toList();
    return new Register(assets, others, warnings);
  }

  /** A known name behind another sign: half of the line was made by hand. */
  private void mixedHeader(String line) {
    for (Separator other : Separator.values()) {
      boolean hidden =
          separator.cells(line).stream()
              .filter(cell -> other != separator && cell.indexOf(other.sign()) >= 0)
              .anyMatch(cell -> other.cells(cell).stream().anyMatch(n -> Column.of(n).isPresent()));
      if (hidden) {
        mistakes.add(
            1,
            Kind.MIXED_SEPARATORS,
            "the names are separated by "
                + separator.word()
                + " and by "
                + other.word()
                + ": use one of them in the whole file");
      }
    }
  }

  private void quotes(String text) {
    for (Quoting.Slip slip : Quoting.slips(text, separator.sign())) {
      mistakes.add(
          header.place(slip.row(), slip.column()),
          slip.kind(),
          switch (slip.kind()) {
            case UNCLOSED_QUOTE ->
                "begins with a quote that is never closed: close it, or take it out; the rows below"
                    + " could not be read";
            case AFTER_QUOTE ->
                "has text after its closing quote: a quote inside a quoted cell is written twice";
            default -> "has a quote inside: put the whole cell in quotes, and the quote twice";
          });
    }
  }

  private void noNul(Row row) {
    for (int i = 0; i < row.cells().size(); i++) {
      if (row.cells().get(i).indexOf('\0') >= 0) {
        mistakes.add(
            header.place(row.number(), i + 1),
            Kind.NUL,
            "has zero bytes: the file is damaged, or not text; save it as CSV UTF-8");
      }
    }
  }

  private boolean isWhole(Row row) {
    int cells = row.cells().size();
    if (cells != header.size()) {
      Optional<Separator> other = otherSeparator(row);
      mistakes.add(
          row.number(),
          other.isPresent() ? Kind.MIXED_SEPARATORS : Kind.CELL_COUNT,
          (cells == 1 ? "has 1 cell" : "has " + cells + " cells")
              + ", the header line "
              + header.size()
              + other
                  .map(
                      o ->
                          ": it is separated by "
                              + o.word()
                              + ", the header by "
                              + separator.word())
                  .orElse(": a separator is missing or too many, or a cell needs quotes"));
      return false;
    }
    nameless(row);
    return true;
  }

  private Optional<Separator> otherSeparator(Row row) {
    String line = String.join(String.valueOf(separator.sign()), row.cells());
    return List.of(Separator.values()).stream()
        .filter(o -> o != separator && o.cells(line).size() == header.size())
        .findFirst();
  }

  private void nameless(Row row) {
    for (int i = 0; i < row.cells().size(); i++) {
      if (header.titles().get(i).isBlank() && !row.cells().get(i).isEmpty()) {
        mistakes.add(
            header.place(row.number(), i + 1),
            Kind.NAMELESS_CELL,
            "has something in it, but the column has no name in the header line");
      }
    }
  }

  private RegisteredAsset asset(Row row) {
    RowCells cells = new RowCells(header, row, numbers, mistakes);
    return new RegisteredAsset(
        row.number(),
        new Label(
            ids.of(cells),
            cells.words(Column.DESCRIPTION),
            cells.words(Column.LOCATION),
            cells.words(Column.SERIAL)),
        equipment(cells),
        criteria.of(cells),
        inService(cells),
        status(cells),
        intervals(cells),
        others(row));
  }

  private static Criteria.Equipment equipment(RowCells cells) {
    Optional<Double> jar = cells.number(Column.JAR_L, JAR);
    Optional<Double> rated = cells.number(Column.RATED_L_MIN, RATED);
    return new Criteria.Equipment(jar.filter(JAR::holds), rated.filter(RATED::holds));
  }

  private static Intervals intervals(RowCells cells) {
    Intervals usual = Intervals.USUAL;
    return new Intervals(
        cells.months(Column.INTERVAL_MONTHS, usual.check(), MONTHS),
        cells.months(Column.INSPECTION_MONTHS, usual.inspection(), MONTHS),
        cells.months(Column.STERILISE_MONTHS, usual.sterilise(), MONTHS));
  }

  private Optional<LocalDate> inService(RowCells cells) {
    Optional<LocalDate> date = cells.date(Column.IN_SERVICE);
    date.filter(d -> d.isAfter(today))
        .ifPresent(d -> cells.no(Column.IN_SERVICE, Kind.TO_COME, d + " is still to come"));
    return date;
  }

  private static Status status(RowCells cells) {
    Optional<String> word = cells.strict(Column.STATUS);
    Optional<Status> status = word.flatMap(Status::of);
    if (word.isPresent() && status.isEmpty()) {
      cells.no(
          Column.STATUS,
          Kind.UNKNOWN_STATUS,
          RowCells.said(word.get()) + " is no status; there are " + Status.all());
    }
    return status.orElse(Status.IN_USE);
  }

  private Map<String, String> others(Row row) {
    return header
        .others()
        .filter(i -> !row.cells().get(i - 1).isEmpty())
        .collect(
            Collectors.toMap(
                i -> header.titles().get(i - 1),
                i -> row.cells().get(i - 1),
                (a, b) -> a,
                LinkedHashMap::new));
  }
}
