package org.thumbseal.capture;

import java.util.ArrayList;
import java.util.List;

/**
 * Goes through the records of a table by RFC 4180: fields in double quotes may hold separators,
 * line breaks and doubled quotes. Blank lines are passed over, and lines beginning with {@code #}
 * before the first record.
 */
final class RecordCursor {
  /** Fields of one record, and the line it began in, from 1. */
  record TableRecord(int line, List<String> fields) {
    /** A field without the blanks around it; empty where the record is too short. */
    String cell(int index) {
      return index < fields.size() ? fields.get(index).strip() : "";
    }

    boolean isBlankFrom(int index) {
      return fields.stream().skip(index).allMatch(String::isBlank);
    }
  }

  /** As many columns as common spreadsheets have; a line of separators alone would fill memory. */
  private static final int MOST_FIELDS = 16_384;

  private final String text;
  private final char separator;
  private int at;
  private int line = 1;
  private boolean begun;
  private TableRecord current = new TableRecord(0, List.of());

  RecordCursor(TableText table) {
    this.text = table.text();
    this.separator = table.separator();
  }

  /**
   * Goes to the next record; false at the end.
   *
   * @throws CaptureFormatException if a quoted field is never closed
   */
  boolean advance() throws CaptureFormatException {
    while (at < text.length()) {
      boolean comment = !begun && text.charAt(at) == '#';
      current = new TableRecord(line, fields());
      if (!comment && !current.isBlankFrom(0)) {
        begun = true;
        return true;
      }
    }
    return false;
  }

  /** The record that was gone to. */
  TableRecord current() {
    return current;
  }

  private List<String> fields() throws CaptureFormatException {
    List<String> fields = new ArrayList<>();
    do {
      if (fields.size() == MOST_FIELDS) {
        throw new CaptureFormatException(
            "not a table of times and pressures: line "
                + line
                + " has more than "
                + MOST_FIELDS
                + " columns");
      }
      fields.add(text.startsWith("\"", at) ? quoted() : plain());
    } while (passes(separator));
    passes('\r');
    passes('\n');
    line++;
    return fields;
  }

  private String plain() {
    int from = at;
    while (at < text.length() && !isEnd(text.charAt(at))) {
      at++;
    }
    return text.substring(from, at);
  }

  /** What stands between a closing quote and the separator is kept, though no writer should. */
  private String quoted() throws CaptureFormatException {
    StringBuilder field = new StringBuilder();
    int from = at + 1;
    at = closing(from);
    field.append(text, from, at++);
    while (text.startsWith("\"", at)) {
      from = at;
      at = closing(at + 1);
      field.append(text, from, at++);
    }
    line += (int) field.chars().filter(c -> c == '\n').count();
    return field.append(plain()).toString();
  }

  private int closing(int from) throws CaptureFormatException {
    int quote = text.indexOf('"', from);
    if (quote < 0) {
      throw new CaptureFormatException(
          "not a table: the quoted field in line " + line + " is never closed");
    }
    return quote;
  }

  private boolean isEnd(char c) {
    return c == separator || c == '\r' || c == '\n';
  }

  private boolean passes(char c) {
    boolean there = at < text.length() && text.charAt(at) == c;
    at += there ? 1 : 0;
    return there;
  }
}
