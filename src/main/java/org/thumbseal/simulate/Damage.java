package org.thumbseal.simulate;

import java.util.List;

/** What a bad line does to the bytes on it. Never makes or leaves a line end. */
final class Damage {
  private enum Kind {
    CHANGED,
    CUT,
    INSERTED,
    LINE_END
  }

  private static final List<Kind> KINDS = List.of(Kind.values());
  private static final int MOST_BYTES = 3;

  private final Draw chance;
  private Kind kind = Kind.CHANGED;

  Damage(Draw chance) {
    this.chance = chance;
  }

  /** Draws the next kind of damage; true when it is the line end that is lost. */
  boolean takesLineEnd() {
    kind = chance.oneOf(KINDS);
    return kind == Kind.LINE_END;
  }

  /** A line damaged by the kind drawn last; never what it was. */
  String to(String line) {
    return switch (kind) {
      case CUT -> line.substring(0, chance.below(line.length()));
      case INSERTED -> inserted(line);
      case CHANGED, LINE_END -> changed(line);
    };
  }

  /** The end of a line whose beginning was not heard. */
  String tail(String line) {
    return line.substring(1 + chance.below(line.length() - 1));
  }

  private String inserted(String line) {
    StringBuilder bytes = new StringBuilder(line);
    for (int i = chance.below(MOST_BYTES); i >= 0; i--) {
      bytes.insert(chance.below(bytes.length() + 1), octet());
    }
    return bytes.toString();
  }

  private String changed(String line) {
    StringBuilder bytes = new StringBuilder(line);
    int first = chance.below(line.length());
    int last = Math.min(line.length() - 1, first + chance.below(MOST_BYTES));
    for (int i = first; i <= last; i++) {
      bytes.setCharAt(i, other(line.charAt(i)));
    }
    return bytes.toString();
  }

  private char other(char octet) {
    char drawn = octet();
    return drawn == octet ? (char) (octet ^ 1) : drawn;
  }

  private char octet() {
    char drawn = (char) chance.below(256);
    return drawn == '\n' || drawn == '\r' ? '?' : drawn;
  }
}
