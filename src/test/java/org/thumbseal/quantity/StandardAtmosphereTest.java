package org.thumbseal.quantity;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

class StandardAtmosphereTest {
  /**
   * hPa by geopotential height: table values of ISO 2533, as in the test data of
   * metanorma/atmospheric. One unit in the last digit printed, because tables were also truncated.
   */
  @ParameterizedTest
  @CsvSource({
    "0, 1013.25, 0.01",
    "500, 954.608, 0.001",
    "1000, 898.746, 0.001",
    "1500, 845.560, 0.001",
    "2000, 794.952, 0.001",
    "2500, 746.825, 0.001",
    "3000, 701.085, 0.001",
    "3500, 657.641, 0.001",
    "4000, 616.402, 0.001",
    "5000, 540.199, 0.001"
  })
  void agreesWithIso2533(double metres, double hectopascals, double lastDigit) {
    assertThat(StandardAtmosphere.pascalsAt(metres) / 100)
        .isCloseTo(hectopascals, within(lastDigit));
  }

  /** Pa by the formula with the constants of the US Standard Atmosphere 1976, computed apart. */
  @ParameterizedTest
  @CsvSource({
    "0, 101325.000",
    "1000, 89874.571",
    "2000, 79495.216",
    "3000, 70108.545",
    "5000, 54019.912"
  })
  void agreesWithTheUsStandardAtmosphere1976(double metres, double pascals) {
    assertThat(StandardAtmosphere.pascalsAt(metres)).isCloseTo(pascals, within(0.0006));
  }

  /** Computed apart: no pump can show 80 kPa above 1949 m, nor rise by 65 kPa above 3591 m. */
  @ParameterizedTest
  @CsvSource({"1949, 80000", "3591, 65000"})
  void theUsualLimitsCannotExistAboveTheseHeights(double metres, double limit) {
    assertThat(StandardAtmosphere.pascalsAt(metres + 0.5)).isLessThan(limit);
    assertThat(StandardAtmosphere.pascalsAt(metres - 0.5)).isGreaterThan(limit);
  }

  /**
   * Computed apart: where a pump with so much vacuum at sea level, in proportion to the air, comes
   * down to 80 kPa (the first six, 94.325 being what leaves 7 kPa) or can no longer rise by 65 kPa.
   */
  @ParameterizedTest
  @CsvSource({
    "95, 1426, 80",
    "92, 1163, 80",
    "90, 982, 80",
    "88, 797, 80",
    "85, 508, 80",
    "94.325, 1368, 80",
    "95, 3088, 65",
    "90, 2662, 65",
    "85, 2206, 65"
  })
  void soundPumpsFallBelowTheUsualLimitsHere(double atSeaLevel, double metres, double limit) {
    double share = atSeaLevel / 101_325;
    assertThat(share * StandardAtmosphere.pascalsAt(metres + 1)).isLessThan(limit);
    assertThat(share * StandardAtmosphere.pascalsAt(metres - 1)).isGreaterThan(limit);
  }

  @ParameterizedTest
  @ValueSource(doubles = {-500.1, 11_000.1, Double.NaN, Double.POSITIVE_INFINITY})
  void refusesHeightsOutsideTheModel(double metres) {
    assertThatThrownBy(() -> StandardAtmosphere.pascalsAt(metres))
        .isInstanceOf(IllegalArgumentException.class)
        .hasMessageContaining("-500 m and 11000 m");
  }

  @Test
  void reachesToTheEndsOfItsRange() {
    assertThat(StandardAtmosphere.pascalsAt(-500)).isGreaterThan(101_325);
    // from memory: 226.32 hPa at the tropopause, ISO 2533
    assertThat(StandardAtmosphere.pascalsAt(11_000)).isCloseTo(22_632, within(1.0));
  }
}
