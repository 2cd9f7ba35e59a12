package org.thumbseal.register;

import java.util.EnumMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Stream;
import org.thumbseal.json.Printable;
import org.thumbseal.register.RegisterMistake.Kind;
import org.thumbseal.register.Rows.Row;

/** The first row: what the columns are called. */
final class Header {
  private static final String NAMES =
      "the first row must hold names of columns, of which 'id' is the least";

  private final List<String> titles;
  private final Mistakes mistakes;
  private final Map<Column, Integer> columns = new EnumMap<>(Column.class);

  private Header(List<String> titles, Mistakes mistakes) {
    this.titles = titles;
    this.mistakes = mistakes;
  }

  /** Reads the first of the rows. */
  static Header of(List<Row> rows, Mistakes mistakes) {
    List<String> titles = rows.isEmpty() ? List.of("") : rows.get(0).cells();
    Header header = new Header(titles, mistakes);
    for (int i = 0; i < titles.size(); i++) {
      header.take(i, titles.get(i));
    }
    header.requireId();
    return header;
  }

  private void take(int index, String title) {
    Place place = place(1, index + 1);
    Optional<Column> column = Column.of(title.strip());
    if (!title.equals(title.strip())) {
      mistakes.add(place, Kind.SPACES, "has spaces around the name of the column: take them out");
    } else if (isTwice(index, title)) {
      mistakes.add(
          place, Kind.COLUMN_TWICE, "the column is there twice: take one out or rename it");
    } else if (column.isEmpty()) {
      Column.like(title).ifPresent(meant -> alike(place, meant));
    }
    column.ifPresent(c -> columns.putIfAbsent(c, index));
  }

  private void alike(Place place, Column meant) {
    mistakes.add(
        place,
        Kind.ALIKE_COLUMN,
        "is kept, but not used; if you mean it, call it " + meant.title());
  }

  private boolean isTwice(int index, String title) {
    String name = title.toLowerCase(Locale.ROOT);
    return !name.isEmpty()
        && titles.subList(0, index).stream()
            .anyMatch(t -> t.strip().toLowerCase(Locale.ROOT).equals(name));
  }

  private void requireId() {
    if (columns.isEmpty()) {
      mistakes.add(1, Kind.NO_HEADER, "there is no header line: " + NAMES);
    } else if (!columns.containsKey(Column.ID)) {
      mistakes.add(1, Kind.NO_ID_COLUMN, "there is no column 'id': " + NAMES);
    }
  }

  /** Whether rows can be read with it. */
  boolean hasId() {
    return columns.containsKey(Column.ID);
  }

  int size() {
    return titles.size();
  }

  List<String> titles() {
    return titles;
  }

  /** A cell by row and column, both from 1. */
  Place place(int row, int column) {
    String title = column <= titles.size() ? titles.get(column - 1).strip() : "";
    return title.isEmpty()
        ? Place.unnamed(row, column)
        : new Place(row, column, Printable.line(title));
  }

  /** Where a known column stands; empty where the file has none of it. */
  Optional<Place> place(int row, Column column) {
    return Optional.ofNullable(columns.get(column)).map(i -> place(row, i + 1));
  }

  /** Places of the columns that the program has no use for, from 1. */
  Stream<Integer> others() {
    return Stream.iterate(1, i -> i <= titles.size(), i -> i + 1)
        .filter(i -> !titles.get(i - 1).isEmpty() && !columns.containsValue(i - 1));
  }
}
