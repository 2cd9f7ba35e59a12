package org.thumbseal.wire;

import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.regex.Pattern;

/**
 * Numbers in columns, counted from 1. A line with more or fewer columns does not fit: a blank in
 * place of a digit would make two numbers of one.
 */
record ColumnCells(Separator separator, int columns, int pressure, Optional<Integer> time)
    implements LineCells {
  /** What stands between two columns. */
  enum Separator {
    COMMA(","),
    SEMICOLON(";"),
    TAB("\t"),
    /** One or more blanks. */
    SPACE(" +");

    private final Pattern pattern;

    Separator(String pattern) {
      this.pattern = Pattern.compile(pattern);
    }

    static Optional<Separator> ofName(String name) {
      return Arrays.stream(values())
          .filter(s -> s.name().equals(name.toUpperCase(Locale.ROOT)))
          .findFirst();
    }
  }

  @Override
  public Optional<Cells> of(String line) {
    List<String> fields = List.of(separator.pattern.split(trimmed(line), -1));
    if (fields.size() != columns || fields.stream().anyMatch(ColumnCells::isOdd)) {
      return Optional.empty();
    }
    return Optional.of(
        new Cells(fields.get(pressure - 1).strip(), time.map(t -> fields.get(t - 1).strip())));
  }

  private String trimmed(String line) {
    return separator == Separator.TAB ? line : line.strip();
  }

  private static boolean isOdd(String field) {
    return field.isBlank() || field.chars().anyMatch(c -> c < ' ' || c > '~');
  }
}
