package org.thumbseal.quantity;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static org.assertj.core.api.Assertions.withinPercentage;

import java.util.Locale;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.EnumSource;

class PressureUnitTest {
  /** Factors of NIST SP 811 appendix B.8, to the seven digits printed there; bar from memory. */
  @ParameterizedTest
  @CsvSource({
    "mmHg, 1.333224E+02",
    "Torr, 1.333224E+02",
    "inHg, 3.386389E+03",
    "mbar, 1.0E+02",
    "bar, 1.0E+05",
    "cmH2O, 9.80665E+01",
    "psi, 6.894757E+03",
    "atm, 1.01325E+05"
  })
  void agreesWithTheFactorsOfSp811(String symbol, double factor) {
    assertThat(unit(symbol).toPascals(1)).isCloseTo(factor, withinPercentage(4e-5));
  }

  /** Products of the defining constants, worked by hand to more digits than SP 811 prints. */
  @ParameterizedTest
  @CsvSource({
    "mmHg, 133.322387415",
    "Torr, 133.32236842105263",
    "inHg, 3386.388640341",
    "cmH2O, 98.0665",
    "psi, 6894.757293168361",
    "Pa, 1",
    "hPa, 100",
    "kPa, 1000"
  })
  void agreesWithTheDefinitions(String symbol, double pascals) {
    assertThat(unit(symbol).toPascals(1)).isCloseTo(pascals, withinPercentage(1e-12));
  }

  /** 80 kPa, the usual limit, in the units of common gauges: quotients of the factors above. */
  @ParameterizedTest
  @CsvSource({
    "mmHg, 600.049, 0.0005",
    "inHg, 23.6240, 0.00005",
    "mbar, 800, 1e-9",
    "cmH2O, 815.773, 0.0005",
    "psi, 11.6030, 0.00005"
  })
  void convertsTheUsualLimit(String symbol, double value, double half) {
    assertThat(unit(symbol).fromPascals(80_000)).isCloseTo(value, within(half));
  }

  @Test
  void sixHundredMillimetresOfMercuryAreJustBelowEightyKilopascals() {
    assertThat(PressureUnit.MILLIMETRE_OF_MERCURY.toPascals(600)).isCloseTo(79_993, within(0.5));
  }

  @ParameterizedTest
  @EnumSource(PressureUnit.class)
  void comesBackFromPascals(PressureUnit unit) {
    assertThat(unit.fromPascals(unit.toPascals(-87.5))).isCloseTo(-87.5, within(1e-12));
    assertThat(unit(unit.symbol())).isEqualTo(unit);
    assertThat(unit(unit.symbol().toUpperCase(Locale.ROOT))).isEqualTo(unit);
  }

  @Test
  void knowsNoOtherUnits() {
    assertThat(PressureUnit.ofSymbol("kp")).isEmpty();
    assertThat(PressureUnit.ofSymbol("")).isEmpty();
  }

  private static PressureUnit unit(String symbol) {
    return PressureUnit.ofSymbol(symbol).orElseThrow();
  }
}
