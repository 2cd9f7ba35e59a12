package org.thumbseal.care;

import java.util.Comparator;

/** Names in the order in which people count them: {@code Ward 2} before {@code Ward 10}. */
final class NaturalOrder implements Comparator<String> {
  /** What has no name comes last. */
  static final Comparator<String> EMPTY_LAST =
      Comparator.comparing(String::isEmpty).thenComparing(new NaturalOrder());

  private NaturalOrder() {}

  @Override
  public int compare(String left, String right) {
    int i = 0;
    int j = 0;
    while (i < left.length() && j < right.length()) {
      String a = run(left, i);
      String b = run(right, j);
      int order = isNumber(a) && isNumber(b) ? number(a, b) : a.compareToIgnoreCase(b);
      if (order != 0) {
        return order;
      }
      i += a.length();
      j += b.length();
    }
    int rest = Integer.compare(left.length() - i, right.length() - j);
    return rest != 0 ? rest : left.compareTo(right);
  }

  /** Digits as one, anything else by the character. */
  private static String run(String text, int from) {
    int to = from + 1;
    while (isDigit(text.charAt(from)) && to < text.length() && isDigit(text.charAt(to))) {
      to++;
    }
    return text.substring(from, to);
  }

  private static boolean isNumber(String run) {
    return isDigit(run.charAt(0));
  }

  private static boolean isDigit(char c) {
    return c >= '0' && c <= '9';
  }

  private static int number(String a, String b) {
    String left = a.replaceFirst("^0+(?=.)", "");
    String right = b.replaceFirst("^0+(?=.)", "");
    int length = Integer.compare(left.length(), right.length());
    return length != 0 ? length : left.compareTo(right);
  }
}
