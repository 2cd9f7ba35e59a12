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
      String a = digits(left, i);
      String b = digits(right, j);
      boolean numbers = !a.isEmpty() && !b.isEmpty();
      int order = numbers ? number(a, b) : folded(left.charAt(i)) - folded(right.charAt(j));
      if (order != 0) {
        return order;
      }
      i += numbers ? a.length() : 1;
      j += numbers ? b.length() : 1;
    }
    int rest = Integer.compare(left.length() - i, right.length() - j);
    return rest != 0 ? rest : left.compareTo(right);
  }

  /** Those that follow one another from here; none where another character stands. */
  private static String digits(String text, int from) {
    int to = from;
    while (to < text.length() && text.charAt(to) >= '0' && text.charAt(to) <= '9') {
      to++;
    }
    return to == from ? "" : text.substring(from, to);
  }

  private static char folded(char c) {
    return Character.toLowerCase(Character.toUpperCase(c));
  }

  private static int number(String a, String b) {
    String left = withoutZeros(a);
    String right = withoutZeros(b);
    int length = Integer.compare(left.length(), right.length());
    return length != 0 ? length : left.compareTo(right);
  }

  private static String withoutZeros(String digits) {
    int first = 0;
    while (first < digits.length() - 1 && digits.charAt(first) == '0') {
      first++;
    }
    return digits.substring(first);
  }
}
