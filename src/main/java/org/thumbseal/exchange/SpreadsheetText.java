package org.thumbseal.exchange;

import java.util.regex.Pattern;
import org.thumbseal.json.Printable;

/**
 * Text of unknown origin for a cell. What a spreadsheet would run as a formula gets an apostrophe
 * before it (common practice, no published source), also behind what another locale takes for the
 * end of a cell. What cannot be seen is written as its escape, so a row stays one line.
 */
final class SpreadsheetText {
  private static final Pattern FORMULA =
      Pattern.compile("(^|[,;|])([\\s\"']*)(?=[=+\\-@\uFF1D\uFF0B\uFF0D\uFF20])");

  private SpreadsheetText() {}

  static String of(String text) {
    return FORMULA.matcher(Printable.whole(text)).replaceAll("$1$2'");
  }
}
