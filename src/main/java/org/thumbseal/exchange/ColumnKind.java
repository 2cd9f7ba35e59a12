package org.thumbseal.exchange;

/** What the text in a column stands for. */
public enum ColumnKind {
  /** Text of a person, a sensor or a file. */
  TEXT("text"),
  /** One of a few words. */
  WORD("word"),
  /** Words with a space between them, in order. */
  WORDS("words"),
  /** RFC 3339 time in UTC with milliseconds. */
  INSTANT("time"),
  /** A decimal number in the unit that the name of the column ends with. */
  QUANTITY("number"),
  /** A whole number from 0. */
  COUNT("whole number"),
  /** {@code true} or {@code false}. */
  FLAG("true or false");

  private final String text;

  ColumnKind(String text) {
    this.text = text;
  }

  /** For the table of columns. */
  public String text() {
    return text;
  }

  boolean isNumber() {
    return this == QUANTITY || this == COUNT;
  }
}
