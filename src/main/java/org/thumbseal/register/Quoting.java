package org.thumbseal.register;

import java.util.ArrayList;
import java.util.List;
import org.thumbseal.register.RegisterMistake.Kind;

/**
 * Where quotes are not as RFC 4180 has them (section 2, rules 5 to 7). A reader of CSV guesses what
 * such a cell may have meant; here it is said.
 */
final class Quoting {
  private enum State {
    BEGINNING,
    PLAIN,
    QUOTED,
    CLOSED
  }

  private final char separator;
  private final List<Slip> slips = new ArrayList<>();
  private State state = State.BEGINNING;
  private int row = 1;
  private int column = 1;

  /**
   * A quote in the wrong place.
   *
   * @param row from 1
   * @param column from 1
   */
  record Slip(int row, int column, Kind kind) {}

  private Quoting(char separator) {
    this.separator = separator;
  }

  /** All slips in a text, one for a cell. */
  static List<Slip> slips(String text, char separator) {
    Quoting quoting = of(text, separator);
    if (quoting.state == State.QUOTED) {
      quoting.slip(Kind.UNCLOSED_QUOTE);
    }
    return quoting.slips;
  }

  /** The cell in which a text ends. */
  static Slip end(String text, char separator, Kind kind) {
    Quoting quoting = of(text, separator);
    return new Slip(quoting.row, quoting.column, kind);
  }

  private static Quoting of(String text, char separator) {
    Quoting quoting = new Quoting(separator);
    for (int i = 0; i < text.length(); i++) {
      quoting.take(text, i);
    }
    return quoting;
  }

  private void take(String text, int at) {
    char c = text.charAt(at);
    if (state == State.QUOTED) {
      state = c == '"' ? State.CLOSED : State.QUOTED;
    } else if (c == separator) {
      column++;
      state = State.BEGINNING;
    } else if (c == '\n' || c == '\r') {
      endOfRow(c == '\r' && text.startsWith("\n", at + 1));
    } else if (c == '"') {
      quote();
    } else {
      other();
    }
  }

  /** Of CR and LF the second ends the row. */
  private void endOfRow(boolean half) {
    if (!half) {
      row++;
      column = 1;
    }
    state = State.BEGINNING;
  }

  /** Right after a closing quote it is one of the pair that stands for a quote. */
  private void quote() {
    if (state == State.PLAIN) {
      slip(Kind.STRAY_QUOTE);
    } else {
      state = State.QUOTED;
    }
  }

  private void other() {
    if (state == State.CLOSED) {
      slip(Kind.AFTER_QUOTE);
    }
    state = State.PLAIN;
  }

  private void slip(Kind kind) {
    Slip last = slips.isEmpty() ? null : slips.get(slips.size() - 1);
    if (last == null || last.row() != row || last.column() != column) {
      slips.add(new Slip(row, column, kind));
    }
  }
}
