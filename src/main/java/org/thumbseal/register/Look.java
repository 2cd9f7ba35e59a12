package org.thumbseal.register;

import java.text.Normalizer;
import java.util.Locale;

/**
 * What an id looks like to a tired eye: two of the same look are worth a word. The idea is that of
 * the skeletons of Unicode Technical Standard 39; which letters are alike is a choice of ours for
 * labels of equipment (common practice, no published source).
 */
final class Look {
  /** Each pair: what is there, what it is taken for. Latin, then Greek and Cyrillic look-alikes. */
  private static final String ALIKE =
      "o0i1l1|1s5z2b8"
          + "\u03bf0\u03b91\u03b1a\u03b5e\u03ba"
          + "k\u03bcm\u03bdn\u03c1p\u03c4t\u03c5y\u03c7x\u03b6"
          + "2\u03b7h\u03b28"
          + "\u043e0\u04561\u0430a\u0435e\u043ak\u043cm\u043dh\u0440p\u0441c\u0442t\u0443y\u0445x\u04555\u04328";

  private Look() {}

  /** The same for two ids that differ only in case, in spaces and strokes, or by letters alike. */
  static String of(String id) {
    StringBuilder look = new StringBuilder();
    Normalizer.normalize(id, Normalizer.Form.NFKC)
        .toUpperCase(Locale.ROOT)
        .toLowerCase(Locale.ROOT)
        .codePoints()
        .filter(Character::isLetterOrDigit)
        .map(Look::taken)
        .forEach(look::appendCodePoint);
    return look.isEmpty() ? id : look.toString();
  }

  private static int taken(int c) {
    for (int i = 0; i < ALIKE.length(); i += 2) {
      if (ALIKE.charAt(i) == c) {
        return ALIKE.charAt(i + 1);
      }
    }
    return c;
  }
}
