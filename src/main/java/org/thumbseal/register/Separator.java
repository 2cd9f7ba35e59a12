package org.thumbseal.register;

import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;

/** The signs between cells that spreadsheets write, by locale. */
enum Separator {
  COMMA(','),
  SEMICOLON(';'),
  TAB('\t');

  private final char sign;

  Separator(char sign) {
    this.sign = sign;
  }

  char sign() {
    return sign;
  }

  /** As people say it. */
  String word() {
    return this == TAB ? "a tab" : "'" + sign + "'";
  }

  /**
   * The one that makes an id and most known column names of the header line; where none does, the
   * one that is there most often, and a comma where there is none.
   */
  static Separator of(String headerLine) {
    return Arrays.stream(values())
        .max(
            Comparator.comparing((Separator s) -> s.makesAnId(headerLine))
                .thenComparingLong(s -> s.known(headerLine))
                .thenComparingLong(s -> headerLine.chars().filter(c -> c == s.sign).count())
                .thenComparing(Comparator.<Separator>naturalOrder().reversed()))
        .orElse(COMMA);
  }

  private boolean makesAnId(String headerLine) {
    return cells(headerLine).stream().anyMatch(c -> Column.of(c).equals(Optional.of(Column.ID)));
  }

  private long known(String headerLine) {
    return cells(headerLine).stream().filter(c -> Column.of(c).isPresent()).count();
  }

  /** A line cut at the sign; good enough for names. */
  List<String> cells(String line) {
    return Arrays.stream(line.split(String.valueOf(sign), -1))
        .map(c -> c.strip().replaceAll("^\"|\"$", ""))
        .toList();
  }
}
