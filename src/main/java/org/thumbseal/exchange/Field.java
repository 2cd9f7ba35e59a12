package org.thumbseal.exchange;

import java.time.Instant;
import java.time.ZoneId;
import java.time.ZoneOffset;
import java.time.format.DateTimeFormatter;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;

/** One column of a file, under the heading that its reader expects. */
public sealed interface Field {
  /** The heading, or the key. */
  String heading();

  /** The text for a result; empty where it has none. */
  Optional<String> text(FlatResult result);

  /** What is in it, where it is taken from the result as it is. */
  ColumnKind kind();

  /** Every column under its own name. */
  static List<Field> all() {
    return Arrays.stream(Column.values())
        .<Field>map(c -> new Taken(c.key(), c, Form.ASIS))
        .toList();
  }

  /**
   * The same for every result.
   *
   * @param heading over it
   * @param constant the text
   */
  record Constant(String heading, String constant) implements Field {
    @Override
    public Optional<String> text(FlatResult result) {
      return Optional.of(constant);
    }

    @Override
    public ColumnKind kind() {
      return ColumnKind.TEXT;
    }
  }

  /**
   * Of the result.
   *
   * @param heading over it
   * @param column that it is taken from
   * @param form that it is given
   */
  record Taken(String heading, Column column, Form form) implements Field {
    @Override
    public Optional<String> text(FlatResult result) {
      return result.cell(column).map(form::of);
    }

    @Override
    public ColumnKind kind() {
      return form.equals(Form.ASIS) ? column.kind() : ColumnKind.TEXT;
    }
  }

  /**
   * Another form of what is in a column.
   *
   * @param pattern of a date and time, as {@link DateTimeFormatter} has them
   * @param zone that the pattern is for
   * @param words other words for those of the column
   */
  record Form(Optional<String> pattern, ZoneId zone, Map<String, String> words) {
    /** As it is. */
    static final Form ASIS = new Form(Optional.empty(), ZoneOffset.UTC, Map.of());

    /** Keeps a copy of the words. */
    public Form {
      words = Map.copyOf(words);
    }

    String of(String text) {
      return pattern
          .map(p -> DateTimeFormatter.ofPattern(p, Locale.ROOT).withZone(zone))
          .map(form -> form.format(Instant.parse(text)))
          .orElseGet(() -> words.getOrDefault(text, text));
    }
  }
}
