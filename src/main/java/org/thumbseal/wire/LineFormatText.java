package org.thumbseal.wire;

import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Function;
import java.util.stream.Collectors;
import org.thumbseal.quantity.PressureUnit;
import org.thumbseal.quantity.TimeScale;
import org.thumbseal.wire.ColumnCells.Separator;
import org.thumbseal.wire.PlainLines.Meaning;

/** The written form of {@link PlainLines}; every mistake in it is one clear line. */
final class LineFormatText {
  static final String BEGIN = "lines:";
  private static final String FORM =
      "lines:column=N,unit=U,sign=gauge|vacuum|absolute, or lines:/expression with (?<p>...)/,"
          + "unit=U,sign=...";
  private static final int LONGEST = 200;
  private static final int MOST_COLUMNS = 40;
  private static final List<String> BOTH = List.of("unit", "sign", "time", "range");
  private static final List<String> OF_COLUMNS = List.of("column", "columns", "separator");
  private static final String NUMBER = "-?[0-9]{1,9}(\\.[0-9]{1,6})?";

  private final Optional<String> expression;
  private final Map<String, String> settings = new LinkedHashMap<>();

  private LineFormatText(Optional<String> expression) {
    this.expression = expression;
  }

  static PlainLines parse(String given) throws LineFormatException {
    String text = given.strip();
    if (!text.startsWith(BEGIN)) {
      throw new LineFormatException("'" + shown(text) + "' is not known; write " + FORM);
    }
    if (text.length() > LONGEST || text.chars().anyMatch(c -> c < ' ' || c > '~')) {
      throw new LineFormatException("must be at most " + LONGEST + " plain ASCII characters");
    }
    LineFormatText parts = split(text.substring(BEGIN.length()));
    return new PlainLines(text, parts.cells(), parts.meaning());
  }

  private static String shown(String text) {
    String plain = text.replaceAll("[^ -~]", "?");
    return plain.length() <= LONGEST ? plain : plain.substring(0, LONGEST) + "...";
  }

  /** The expression goes up to the last slash: no setting has one in it. */
  private static LineFormatText split(String rest) throws LineFormatException {
    if (!rest.startsWith("/")) {
      return new LineFormatText(Optional.empty()).settings(rest);
    }
    int end = rest.lastIndexOf('/');
    String behind = rest.substring(end + 1);
    if (end == 0 || !behind.startsWith(",")) {
      throw new LineFormatException(
          "the expression must stand between two slashes, with a comma and the settings behind: "
              + FORM);
    }
    return new LineFormatText(Optional.of(rest.substring(1, end))).settings(behind.substring(1));
  }

  private LineFormatText settings(String text) throws LineFormatException {
    for (String part : text.split(",", -1)) {
      int equals = part.indexOf('=');
      String key = equals < 0 ? part.strip() : part.substring(0, equals).strip();
      boolean known = BOTH.contains(key) || (expression.isEmpty() && OF_COLUMNS.contains(key));
      if (equals < 0 || !known) {
        throw new LineFormatException("'" + part + "' does not fit; write " + FORM);
      }
      if (settings.put(key, part.substring(equals + 1).strip()) != null) {
        throw new LineFormatException(key + " is given twice");
      }
    }
    return this;
  }

  private LineCells cells() throws LineFormatException {
    if (expression.isPresent()) {
      return PatternCells.of(expression.get(), settings.containsKey("time"));
    }
    int pressure = column("column", setting("column", "the number of the column of pressures"));
    Optional<Integer> time = timeColumn();
    if (time.isPresent() && time.get() == pressure) {
      throw new LineFormatException("time and pressure cannot be the same column");
    }
    int last = Math.max(pressure, time.orElse(1));
    String said = settings.getOrDefault("columns", Integer.toString(last));
    int columns = column("columns", said);
    if (columns < last) {
      throw new LineFormatException("columns=" + columns + ", but column " + last + " is named");
    }
    return new ColumnCells(separator(), columns, pressure, time);
  }

  private Optional<Integer> timeColumn() throws LineFormatException {
    String time = settings.get("time");
    if (time == null) {
      return Optional.empty();
    }
    int colon = time.indexOf(':');
    if (colon < 0) {
      throw new LineFormatException("time=" + time + ": write time=COLUMN:UNIT, such as time=1:ms");
    }
    return Optional.of(column("time", time.substring(0, colon)));
  }

  private static int column(String key, String number) throws LineFormatException {
    int column = number.matches("[0-9]{1,3}") ? Integer.parseInt(number) : 0;
    if (column < 1 || column > MOST_COLUMNS) {
      throw new LineFormatException(
          key + ": '" + number + "' is no number of a column, 1 to " + MOST_COLUMNS);
    }
    return column;
  }

  private Separator separator() throws LineFormatException {
    return known(
        "separator",
        settings.getOrDefault("separator", "comma"),
        Separator::ofName,
        "comma, semicolon, tab or space");
  }

  private Meaning meaning() throws LineFormatException {
    String units =
        Arrays.stream(PressureUnit.values())
            .map(PressureUnit::symbol)
            .collect(Collectors.joining(", "));
    PressureUnit unit = known("unit", setting("unit", units), PressureUnit::ofSymbol, units);
    String senses = "gauge (negative under vacuum), vacuum (positive under vacuum) or absolute";
    PressureSense sense = known("sign", setting("sign", senses), PressureSense::ofName, senses);
    boolean told = settings.containsKey("range");
    PressureRange range = told ? range(unit, sense) : PressureRange.any(sense);
    return new Meaning(unit, sense, time(), range, told);
  }

  private Optional<TimeScale> time() throws LineFormatException {
    String time = settings.get("time");
    if (time == null) {
      return Optional.empty();
    }
    String unit = time.substring(expression.isPresent() ? 0 : time.indexOf(':') + 1);
    return Optional.of(
        known(
            "time",
            unit,
            symbol -> TimeScale.ofSymbol(symbol).filter(s -> s != TimeScale.ISO_8601),
            "us, ms, s or min"));
  }

  /** From the numbers as they are printed to what a sensor of the wire protocol would send. */
  private PressureRange range(PressureUnit unit, PressureSense sense) throws LineFormatException {
    String[] ends = settings.getOrDefault("range", "").split("\\.\\.", -1);
    if (ends.length != 2 || !ends[0].matches(NUMBER) || !ends[1].matches(NUMBER)) {
      throw new LineFormatException(
          "range=" + settings.get("range") + ": write range=LOW..HIGH, such as range=-100..0");
    }
    double one = sense.signed(unit.toPascals(Double.parseDouble(ends[0])));
    double other = sense.signed(unit.toPascals(Double.parseDouble(ends[1])));
    if (one == other) {
      throw new LineFormatException("range: both ends are the same");
    }
    return new PressureRange(Math.min(one, other), Math.max(one, other));
  }

  private String setting(String key, String what) throws LineFormatException {
    String value = settings.get(key);
    if (value == null) {
      throw new LineFormatException("no " + key + "=...: say " + what);
    }
    return value;
  }

  private static <T> T known(
      String key, String value, Function<String, Optional<T>> lookup, String choice)
      throws LineFormatException {
    Optional<T> found = lookup.apply(value);
    if (found.isEmpty()) {
      throw new LineFormatException(key + "=" + value + " is not known: it is one of " + choice);
    }
    return found.get();
  }
}
