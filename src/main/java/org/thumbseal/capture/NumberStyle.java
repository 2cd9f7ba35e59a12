package org.thumbseal.capture;

import java.util.OptionalDouble;
import java.util.regex.Pattern;

/**
 * How the numbers of one column are written: which of point and comma is the decimal mark, and
 * whether the other one groups thousands.
 *
 * <p>A mark groups thousands only if every number of the column that has it has groups of three
 * behind it, and at least one leaves no doubt: with two such groups, or with the other mark behind
 * them. So {@code 100.000} is a hundred in one column and a hundred thousand in another.
 */
final class NumberStyle {
  /** Longer cells are no numbers, and would take the patterns long to tell. */
  private static final int LONGEST = 40;

  private static final Pattern NUMBER =
      Pattern.compile("[-+]?([0-9]+\\.?[0-9]*|\\.[0-9]+)([eE][-+]?[0-9]{1,3})?");
  private static final Pattern LOOSE = Pattern.compile("[-+]?[0-9.,]*[0-9][.,]?([eE][-+]?[0-9]+)?");

  private static final Pattern GROUPING = Pattern.compile("(?<=[0-9])[\u00a0\u202f' ](?=[0-9])");
  private static final char MINUS = '\u2212';

  private final Marks points = new Marks('.', ',');
  private final Marks commas = new Marks(',', '.');

  /** Whether a cell is meant as a number in any style. */
  static boolean isNumber(String cell) {
    return cell.length() <= LONGEST && LOOSE.matcher(tidy(cell)).matches();
  }

  /** Takes a cell into account; all of a column come before the first {@link #read}. */
  void observe(String cell) {
    if (isNumber(cell)) {
      points.observe(tidy(cell));
      commas.observe(tidy(cell));
    }
  }

  /** The number in a cell; empty where it is none, or not finite. */
  OptionalDouble read(String cell) {
    String plain = isNumber(cell) ? withPoint(tidy(cell)) : "";
    if (!NUMBER.matcher(plain).matches()) {
      return OptionalDouble.empty();
    }
    double value = Double.parseDouble(plain);
    return Double.isFinite(value) ? OptionalDouble.of(value) : OptionalDouble.empty();
  }

  private String withPoint(String tidy) {
    if (points.group()) {
      return tidy.replace(".", "").replace(',', '.');
    }
    if (commas.group()) {
      return tidy.replace(",", "");
    }
    return commas.seen && !points.seen ? tidy.replace(',', '.') : tidy;
  }

  /** Without the spaces and apostrophes that group digits, and with a plain minus sign. */
  private static String tidy(String cell) {
    String plain = cell.strip();
    boolean ascii = plain.chars().allMatch(c -> c > ' ' && c <= '~' && c != '\'');
    return ascii ? plain : GROUPING.matcher(plain.replace(MINUS, '-')).replaceAll("");
  }

  /** What was seen of one mark. */
  private static final class Marks {
    private final char mark;
    private final Pattern grouped;
    private final Pattern clearlyGrouped;
    private boolean seen;
    private boolean clear;
    private boolean broken;

    Marks(char mark, char other) {
      String group = "([" + mark + "][0-9]{3})";
      String behind = "[" + other + "][0-9]*";
      this.mark = mark;
      grouped = Pattern.compile("[-+]?[0-9]{1,3}" + group + "+(" + behind + ")?");
      clearlyGrouped = Pattern.compile(".*(" + group + "{2}|" + group + behind + ")");
    }

    void observe(String number) {
      if (number.indexOf(mark) >= 0) {
        seen = true;
        broken = broken || !grouped.matcher(number).matches();
        clear = clear || (!broken && clearlyGrouped.matcher(number).matches());
      }
    }

    boolean group() {
      return clear && !broken;
    }
  }
}
