package org.thumbseal.cli;

import java.util.Optional;
import org.jspecify.annotations.Nullable;

/** What a person says in words of their own, as far as it goes into sealed documents. */
final class SaidText {
  /** Longest name of a person or a pump. */
  static final int NAME = 100;

  /** Longest remark. */
  static final int REMARK = 1000;

  private SaidText() {}

  /** The text without blanks around it; empty where none was given. */
  static Optional<String> optional(String option, @Nullable String given, int longest) {
    return Optional.ofNullable(given).map(text -> required(option, text, longest));
  }

  /** The text without blanks around it. */
  static String required(String option, String given, int longest) {
    String text = given.strip();
    if (!isPlain(text, longest)) {
      throw Failure.usage(option + " must be 1 to " + longest + " plain characters on one line");
    }
    return text;
  }

  private static boolean isPlain(String text, int longest) {
    boolean odd =
        text.codePoints().anyMatch(c -> Character.isISOControl(c) || (c >= 0xD800 && c <= 0xDFFF));
    return !text.isEmpty() && text.length() <= longest && !odd;
  }
}
