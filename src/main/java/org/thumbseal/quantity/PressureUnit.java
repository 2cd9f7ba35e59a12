package org.thumbseal.quantity;

import java.util.Arrays;
import java.util.Optional;

/** Units of pressure that tables and options may use, with their exact or conventional size. */
public enum PressureUnit {
  PASCAL("Pa", 1),
  HECTOPASCAL("hPa", 100),
  KILOPASCAL("kPa", 1_000),
  MILLIBAR("mbar", 100),
  /** Exact by definition. */
  BAR("bar", 100_000),
  /** Conventional millimetre of mercury: 13 595.1 kg/m3 x 9.80665 m/s2 x 1 mm (NIST SP 811 B.8). */
  MILLIMETRE_OF_MERCURY("mmHg", 133.322387415),
  /** 101 325/760 Pa by definition (NIST SP 811 B.8). */
  TORR("Torr", 101_325.0 / 760.0),
  /** Conventional inch of mercury (NIST SP 811 B.8). */
  INCH_OF_MERCURY("inHg", 3386.388640341),
  /** Conventional centimetre of water, exact (NIST SP 811 B.8). */
  CENTIMETRE_OF_WATER("cmH2O", 98.0665),
  /** 0.45359237 kg x 9.80665 m/s2 / (0.0254 m)2 (NIST SP 811 B.8). */
  POUND_PER_SQUARE_INCH("psi", 0.45359237 * 9.80665 / (0.0254 * 0.0254)),
  /** Standard atmosphere, exact by definition. */
  ATMOSPHERE("atm", 101_325);

  private final String symbol;
  private final double pascals;

  PressureUnit(String symbol, double pascals) {
    this.symbol = symbol;
    this.pascals = pascals;
  }

  /** The symbol as written in options and headers, such as {@code kPa}. */
  public String symbol() {
    return symbol;
  }

  /** Converts a value in this unit to pascals. */
  public double toPascals(double value) {
    return value * pascals;
  }

  /** Converts pascals to this unit. */
  public double fromPascals(double value) {
    return value / pascals;
  }

  /** The unit of a symbol; capitals do not matter, and {@code Torr} and {@code torr} are one. */
  public static Optional<PressureUnit> ofSymbol(String symbol) {
    return Arrays.stream(values()).filter(u -> u.symbol.equalsIgnoreCase(symbol)).findFirst();
  }
}
