package org.thumbseal.cli;

import java.util.Locale;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.thumbseal.calibration.CalibrationPoint;
import org.thumbseal.json.CalibrationTree;
import org.thumbseal.quantity.PressureUnit;

/** Pressures as people type them: kPa, or any unit that is written out. */
final class PressureText {
  private static final Pattern WITH_UNIT =
      Pattern.compile("([+-]?[0-9]{1,7}(?:[.,][0-9]{1,7})?) *([A-Za-z][A-Za-z0-9]{0,7})?");

  private PressureText() {}

  /**
   * Pressure in kPa, rounded as documents carry it.
   *
   * @throws IllegalArgumentException with half a sentence for a person
   */
  static double kilopascals(String text) {
    Matcher matcher = WITH_UNIT.matcher(text.strip());
    if (!matcher.matches()) {
      throw new IllegalArgumentException(
          "'" + text.strip() + "' is no pressure; write it as 81.2, or 609 mmHg");
    }
    String symbol = matcher.group(2) == null ? "kPa" : matcher.group(2);
    PressureUnit unit =
        PressureUnit.ofSymbol(symbol)
            .orElseThrow(
                () ->
                    new IllegalArgumentException(
                        "'" + symbol + "' is no unit of pressure; write kPa or mmHg"));
    double value = Double.parseDouble(matcher.group(1).replace(',', '.'));
    return CalibrationTree.rounded(unit.toPascals(value) / 1_000);
  }

  /**
   * What sensor and reference read, with an equals sign between.
   *
   * @throws IllegalArgumentException with half a sentence for a person
   */
  static CalibrationPoint pair(String text) {
    String[] halves = text.split("=", -1);
    if (halves.length != 2) {
      throw new IllegalArgumentException(
          "'"
              + text
              + "' is no pair; write what the sensor reads, an equals sign, and what the"
              + " reference reads, as in 79.6=81.2");
    }
    return new CalibrationPoint(kilopascals(halves[0]), kilopascals(halves[1]));
  }

  /** "81.24 kPa". */
  static String of(double kilopascals) {
    return String.format(Locale.ROOT, "%.2f kPa", kilopascals);
  }
}
