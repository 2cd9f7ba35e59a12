package org.thumbseal.exchange;

import java.util.Collections;
import java.util.EnumMap;
import java.util.Map;
import java.util.Optional;
import java.util.regex.Pattern;
import org.thumbseal.json.DocumentView;
import org.thumbseal.record.ResultDocument;

/**
 * A result as a logbook should store it.
 *
 * @param cells the text of each column that it has, in the order of the columns; numbers in their
 *     shortest form with a decimal point
 */
public record FlatResult(Map<Column, String> cells) {
  private static final Pattern UUID = Pattern.compile("[0-9a-f]{8}(-[0-9a-f]{4}){3}-[0-9a-f]{12}");

  /** Keeps a copy. */
  public FlatResult {
    cells = Collections.unmodifiableMap(new EnumMap<>(cells));
  }

  /** The text of a column. */
  public Optional<String> cell(Column column) {
    return Optional.ofNullable(cells.get(column));
  }

  /**
   * Takes a result apart.
   *
   * @throws ResultRefused if it is of a shape or kind not known here, or holds what no column may
   */
  public static FlatResult of(SealedResult result) throws ResultRefused {
    requireKnown(result.view());
    Map<Column, String> cells = new EnumMap<>(Column.class);
    for (Column column : Column.values()) {
      column.from(result).ifPresent(text -> cells.put(column, text));
    }
    return new FlatResult(cells);
  }

  private static void requireKnown(DocumentView view) throws ResultRefused {
    require(view, "kind", ResultDocument.KIND);
    require(view, "schema", ResultDocument.SCHEMA);
    if (!UUID.matcher(view.text("/id").orElse("")).matches()) {
      throw ResultRefused.because("its id is no UUID");
    }
    if (!Column.VERDICT.words().contains(view.text("/verdict").orElse(""))) {
      throw ResultRefused.because(
          "its verdict is none of " + String.join(", ", Column.VERDICT.words()));
    }
  }

  private static void require(DocumentView view, String member, String known) throws ResultRefused {
    String found = view.text("/" + member).orElse("");
    if (!found.equals(known)) {
      throw ResultRefused.because(
          "its " + member + " is '" + found + "', and only '" + known + "' is known here");
    }
  }
}
