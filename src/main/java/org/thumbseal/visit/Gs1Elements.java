package org.thumbseal.visit;

import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.thumbseal.visit.BadScanException.Cause;

/**
 * The elements of a GS1 code, by application identifier: as people read it, with the identifiers in
 * brackets, or as a scanner sends it, where elements of no fixed length end with GS (0x1D) unless
 * they are last.
 *
 * <p>Identifiers and lengths: GTIN (01), production date (11), expiry (17), lot (10), serial (21)
 * of the UDI tables of GS1 and FDA; GIAI (8004), prefixes and separator from memory.
 */
final class Gs1Elements {
  private static final char GS = 0x1D;
  private static final Pattern PREFIX = Pattern.compile("\\](C1|d2|Q3|e0).*", Pattern.DOTALL);
  private static final Pattern BRACKETED = Pattern.compile("\\((01|10|11|17|21|8004)\\).*");
  private static final Pattern NEXT_BRACKET = Pattern.compile("(?=\\([0-9]{2,4}\\))");
  private static final Pattern BARE = Pattern.compile("01[0-9]{14}(10|11|17|21).*");

  /** The 82 characters of GS1 (General Specifications, from memory). */
  private static final String TEXT = "[!\"%&'()*+,\\-./0-9:;<=>?A-Z_a-z]";

  private static final String DATE = "[0-9]{2}(0[1-9]|1[0-2])([0-2][0-9]|3[01])";

  private static final Map<String, Pattern> FORMS =
      Map.of(
          "01", Pattern.compile("[0-9]{14}"),
          "11", Pattern.compile(DATE),
          "17", Pattern.compile(DATE),
          "10", Pattern.compile(TEXT + "{1,20}"),
          "21", Pattern.compile(TEXT + "{1,20}"),
          "8004", Pattern.compile(TEXT + "{1,30}"));

  private static final Map<String, Integer> FIXED = Map.of("01", 14, "11", 6, "17", 6);

  private final Map<String, String> elements = new LinkedHashMap<>();

  private Gs1Elements() {}

  /** The elements of a code; empty where it is not of GS1. */
  static Optional<Map<String, String>> of(String code) throws BadScanException {
    Gs1Elements found = new Gs1Elements();
    if (PREFIX.matcher(code).matches()) {
      found.scanned(code.substring(3));
    } else if (code.indexOf(GS) >= 0) {
      found.scanned(code);
    } else if (BRACKETED.matcher(code).matches()) {
      found.bracketed(code);
    } else {
      return withoutMarks(code);
    }
    return Optional.of(found.elements);
  }

  /** Scanners that leave out all marks: only what fits to the last digit is taken for such. */
  private static Optional<Map<String, String>> withoutMarks(String code) {
    if (!BARE.matcher(code).matches()) {
      return Optional.empty();
    }
    try {
      Gs1Elements found = new Gs1Elements();
      found.scanned(code);
      return Optional.of(found.elements);
    } catch (BadScanException e) {
      return Optional.empty();
    }
  }

  private void bracketed(String code) throws BadScanException {
    for (String element : NEXT_BRACKET.split(code, -1)) {
      int end = element.indexOf(')');
      add(element.substring(1, end), element.substring(end + 1).strip());
    }
  }

  private void scanned(String code) throws BadScanException {
    int at = 0;
    while (at < code.length()) {
      at = code.charAt(at) == GS ? at + 1 : element(code, at);
    }
  }

  /** Takes the element that begins here; where the next one does. */
  private int element(String code, int at) throws BadScanException {
    String identifier = identifier(code, at);
    int from = at + identifier.length();
    int end = code.indexOf(GS, from);
    int last = end < 0 ? code.length() : end;
    int to = Math.min(last, from + FIXED.getOrDefault(identifier, Integer.MAX_VALUE - from));
    add(identifier, code.substring(from, to));
    return to;
  }

  private static String identifier(String code, int at) throws BadScanException {
    return FORMS.keySet().stream()
        .filter(identifier -> code.startsWith(identifier, at))
        .findFirst()
        .orElseThrow(() -> notRead("it has a part of unknown kind"));
  }

  /** Parts that nobody asked for are of no use here; people may leave them in. */
  private void add(String identifier, String value) throws BadScanException {
    Pattern form = FORMS.get(identifier);
    if (form == null) {
      return;
    }
    Matcher matcher = form.matcher(value);
    if (!matcher.matches()) {
      throw notRead("its part (" + identifier + ") is not of the right form");
    } else if (identifier.equals("01") && !isChecked(value)) {
      throw notRead("its check digit is wrong");
    } else if (!elements.getOrDefault(identifier, value).equals(value)) {
      throw notRead("its part (" + identifier + ") is there twice");
    }
    elements.put(identifier, value);
  }

  private static BadScanException notRead(String why) {
    return new BadScanException(
        Cause.BAD_CODE, "this GS1 code was not read right: " + why + "; scan or type it again");
  }

  /** Weights 3 and 1 from the left, all digits together a multiple of ten (GS1, mod 10). */
  private static boolean isChecked(String gtin) {
    int sum = 0;
    for (int i = 0; i < gtin.length(); i++) {
      sum += (gtin.charAt(i) - '0') * (i % 2 == 0 ? 3 : 1);
    }
    return sum % 10 == 0;
  }
}
