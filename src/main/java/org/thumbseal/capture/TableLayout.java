package org.thumbseal.capture;

import java.util.List;
import java.util.function.Predicate;
import java.util.stream.IntStream;
import org.thumbseal.capture.RecordCursor.TableRecord;
import org.thumbseal.quantity.TimeScale;

/**
 * Where a table has what was asked for.
 *
 * @param head whether the first record names the columns
 * @param width number of fields of the first record
 * @param time index of the times, from 0
 * @param pressure index of the pressures, from 0
 */
record TableLayout(boolean head, int width, int time, int pressure) {
  private static final int MOST_NAMES = 20;

  /**
   * Finds the columns by name or number; what is all digits is a number.
   *
   * @throws CaptureFormatException if one is not there, or both are the same
   */
  static TableLayout of(TableRecord first, Columns columns) throws CaptureFormatException {
    int time = indexOf(first, columns.time().name());
    int pressure = indexOf(first, columns.pressure().name());
    if (time == pressure) {
      throw new CaptureFormatException(
          "time and pressure cannot both be column '" + columns.time().name() + "'");
    }
    boolean named = !isNumber(columns.time().name()) || !isNumber(columns.pressure().name());
    boolean data = isData(first.cell(time)) || isData(first.cell(pressure));
    return new TableLayout(named || !data, first.fields().size(), time, pressure);
  }

  /** Whether a record has both fields and no more than the first one. */
  boolean fits(TableRecord row) {
    return row.fields().size() > Math.max(time, pressure) && row.isBlankFrom(width);
  }

  private static int indexOf(TableRecord first, String name) throws CaptureFormatException {
    return isNumber(name) ? numbered(first, name) : named(first, name);
  }

  private static int numbered(TableRecord first, String number) throws CaptureFormatException {
    int count = first.fields().size();
    int column = Integer.parseInt(number);
    if (column < 1 || column > count) {
      throw new CaptureFormatException(
          "no column " + number + ": they count from 1, and the table has " + count);
    }
    return column - 1;
  }

  private static int named(TableRecord first, String name) throws CaptureFormatException {
    List<Integer> found = matching(first, name::equals);
    if (found.isEmpty()) {
      found = matching(first, name::equalsIgnoreCase);
    }
    if (found.size() > 1) {
      throw new CaptureFormatException(
          "more than one column is named '" + name + "': give its number instead");
    }
    if (found.isEmpty()) {
      throw new CaptureFormatException("no column named '" + name + "'; " + content(first));
    }
    return found.get(0);
  }

  private static List<Integer> matching(TableRecord first, Predicate<String> test) {
    return IntStream.range(0, first.fields().size())
        .filter(i -> test.test(first.cell(i)))
        .boxed()
        .toList();
  }

  private static String content(TableRecord first) {
    List<String> names = first.fields().stream().map(String::strip).toList();
    if (names.stream().allMatch(TableLayout::isData)) {
      return "the table has no names: give the columns by number, 1 to " + names.size();
    }
    String more = names.size() > MOST_NAMES ? ", ..." : "";
    return "the table has: "
        + Quote.of(String.join(", ", names.subList(0, Math.min(MOST_NAMES, names.size()))))
        + more;
  }

  private static boolean isNumber(String name) {
    return name.matches("[0-9]{1,6}");
  }

  private static boolean isData(String cell) {
    return NumberStyle.isNumber(cell) || TimeScale.isoTime(cell).isPresent();
  }
}
