package org.thumbseal.register;

import java.time.LocalDate;
import java.time.Month;
import java.time.YearMonth;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.thumbseal.json.Printable;
import org.thumbseal.register.RegisterMistake.Kind;
import org.thumbseal.register.Rows.Row;

/** The cells of one row, each read as what its column is for; an empty one is not said. */
final class RowCells {
  private static final int LONGEST_TEXT = 500;
  private static final Pattern DATE = Pattern.compile("([0-9]{4})-([0-9]{2})-([0-9]{2})");
  private static final int EARLIEST_YEAR = 1950;
  private static final int LATEST_YEAR = 2199;

  private final Header header;
  private final Row row;
  private final DecimalNumbers numbers;
  private final Mistakes mistakes;

  RowCells(Header header, Row row, DecimalNumbers numbers, Mistakes mistakes) {
    this.header = header;
    this.row = row;
    this.numbers = numbers;
    this.mistakes = mistakes;
  }

  /**
   * Bounds of a value.
   *
   * @param unit for people
   */
  record Range(double low, double high, String unit) {
    boolean holds(double value) {
      return value >= low && value <= high;
    }

    @Override
    public String toString() {
      return plain(low) + " to " + plain(high) + " " + unit;
    }

    private static String plain(double value) {
      return value == Math.rint(value) ? String.valueOf((long) value) : String.valueOf(value);
    }
  }

  /** Where a column stands; row and name for one that is not there. */
  Place place(Column column) {
    return header.place(row.number(), column).orElse(new Place(row.number(), 0, ""));
  }

  /** A cell as it stands there; spaces around it are a mistake. */
  Optional<String> strict(Column column) {
    Optional<String> cell = cell(column).filter(c -> !c.isEmpty());
    cell.filter(c -> !c.equals(stripped(c)))
        .ifPresent(c -> no(column, Kind.SPACES, said(c) + " has spaces around it: take them out"));
    return cell.filter(c -> c.equals(stripped(c)));
  }

  /** Spreadsheets fill up with no-break spaces too. */
  private static String stripped(String cell) {
    return cell.replaceAll("^[\\s\\p{Z}]+|[\\s\\p{Z}]+$", "");
  }

  private Optional<String> cell(Column column) {
    return header
        .place(row.number(), column)
        .map(Place::column)
        .filter(c -> c <= row.cells().size())
        .map(c -> row.cells().get(c - 1));
  }

  /** Words of a person: line breaks may stand in them. */
  Optional<String> words(Column column) {
    Optional<String> words = cell(column).filter(c -> !c.isBlank());
    words
        .filter(w -> w.codePointCount(0, w.length()) > LONGEST_TEXT)
        .ifPresent(w -> no(column, Kind.TOO_LONG, "is longer than 500 characters"));
    words
        .filter(w -> w.codePoints().anyMatch(RowCells::isNoText))
        .ifPresent(w -> no(column, Kind.UNPRINTABLE, said(w) + " has characters that are no text"));
    return words;
  }

  private static boolean isNoText(int c) {
    return switch (Character.getType(c)) {
      case Character.CONTROL -> c != '\n' && c != '\r' && c != '\t' && c != 0;
      case Character.PRIVATE_USE, Character.UNASSIGNED -> true;
      default -> false;
    };
  }

  Optional<Double> number(Column column, Range range) {
    Optional<String> text = strict(column);
    OptionalDouble value =
        text.map(t -> numbers.read(place(column), t)).orElse(OptionalDouble.empty());
    if (value.isPresent() && !range.holds(value.getAsDouble())) {
      outOfRange(column, text.orElse(""), range);
    }
    return value.isPresent() ? Optional.of(value.getAsDouble()) : Optional.empty();
  }

  private void outOfRange(Column column, String text, Range range) {
    no(column, Kind.OUT_OF_RANGE, said(text) + " is out of range: " + range);
  }

  /** Whole months. */
  int months(Column column, int otherwise, Range range) {
    Optional<String> text = strict(column);
    if (text.isEmpty()) {
      return otherwise;
    } else if (!text.get().matches("[0-9]{1,9}")) {
      no(column, Kind.NOT_WHOLE, said(text.get()) + " is not a whole number of months");
      return otherwise;
    }
    int months = Integer.parseInt(text.get());
    if (!range.holds(months)) {
      outOfRange(column, text.get(), range);
    }
    return months;
  }

  Optional<LocalDate> date(Column column) {
    Optional<String> text = strict(column);
    if (text.isEmpty()) {
      return Optional.empty();
    }
    Matcher date = DATE.matcher(text.get());
    if (!date.matches()) {
      no(column, Kind.NOT_A_DATE, said(text.get()) + " is not a date as 2026-02-28");
      return Optional.empty();
    }
    return date(column, date);
  }

  private Optional<LocalDate> date(Column column, Matcher date) {
    int year = Integer.parseInt(date.group(1));
    int month = Integer.parseInt(date.group(2));
    int day = Integer.parseInt(date.group(3));
    if (month < 1 || month > 12 || day < 1 || day > YearMonth.of(year, month).lengthOfMonth()) {
      no(column, Kind.NO_SUCH_DATE, said(date.group()) + " does not exist" + lengthOf(year, month));
    } else if (year < EARLIEST_YEAR || year > LATEST_YEAR) {
      no(column, Kind.OUT_OF_RANGE, said(date.group()) + " is out of range: 1950 to 2199");
    } else {
      return Optional.of(LocalDate.of(year, month, day));
    }
    return Optional.empty();
  }

  private static String lengthOf(int year, int month) {
    return month < 1 || month > 12
        ? ": there are 12 months"
        : ": "
            + Month.of(month).getDisplayName(java.time.format.TextStyle.FULL, Locale.ENGLISH)
            + " "
            + year
            + " has "
            + YearMonth.of(year, month).lengthOfMonth()
            + " days";
  }

  void no(Column column, Kind kind, String text) {
    mistakes.add(place(column), kind, text);
  }

  static String said(String text) {
    return "'" + Printable.line(text) + "'";
  }
}
