package org.thumbseal.grade;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.thumbseal.grade.Criteria.AltitudeRule;
import org.thumbseal.grade.Criteria.DecisionRule;
import org.thumbseal.grade.Criteria.Equipment;
import org.thumbseal.measurement.AmbientPressure;
import org.thumbseal.measurement.AmbientPressure.Origin;
import org.thumbseal.quantity.StandardAtmosphere;

/** What becomes of the limits where the air is thin. */
class LimitsTest {
  private static final Criteria STRICT =
      new Criteria(
          "s", 65, 10, 6, 80, 5, AltitudeRule.STRICT, DecisionRule.GUARDED, Equipment.UNKNOWN);

  private static Optional<AmbientPressure> air(double kilopascals) {
    return Optional.of(new AmbientPressure(kilopascals, 0.3, Origin.GIVEN));
  }

  /**
   * Ambient pressure by the standard atmosphere at 500 to 5000 m, and what 80 and 65 kPa are worth
   * there: computed from ISO 2533:1975 / US 1976 as share 0.78954 and 0.64150 of it.
   */
  @ParameterizedTest
  @CsvSource({
    "95.460839, 75.37, 61.24",
    "89.874571, 70.96, 57.65",
    "79.495216, 62.76, 51.00",
    "70.108545, 55.35, 44.97",
    "84.556005, 66.76, 54.24",
    "74.682534, 58.96, 47.91",
    "65.764084, 51.92, 42.19",
    "61.640235, 48.67, 39.54",
    "54.019912, 42.65, 34.65",
  })
  void areScaledByTheShareOfTheAir(double ambient, double maximum, double rise) {
    Limits limits = Limits.of(Criteria.DEFAULT, air(ambient));

    assertThat(limits.maximumKilopascals()).isCloseTo(maximum, within(0.0051));
    assertThat(limits.riseKilopascals()).isCloseTo(rise, within(0.0051));
    assertThat(limits.isAdjusted()).isTrue();
  }

  @Test
  void standAsSetInOrdinaryWeather() {
    for (double ambient : new double[] {98, 101.325, 104}) {
      Limits limits = Limits.of(Criteria.DEFAULT, air(ambient));
      assertThat(limits).isEqualTo(new Limits(65, 80, 1));
      assertThat(limits.isAdjusted()).isFalse();
    }
    assertThat(Limits.of(Criteria.DEFAULT, air(97.99)).isAdjusted()).isTrue();
  }

  @Test
  void standAsSetWhereNobodyKnowsTheAirOrTheSiteIsStrict() {
    assertThat(Limits.of(Criteria.DEFAULT, Optional.empty())).isEqualTo(new Limits(65, 80, 1));
    assertThat(Limits.of(STRICT, air(70))).isEqualTo(new Limits(65, 80, 1));
  }

  /** Under the strict rule a limit that the air does not allow is not the pump's fault. */
  @ParameterizedTest
  @CsvSource({"79.9, invalid", "80.1, fail"})
  void strictLimitsThatCannotBeMet(double ambient, String verdict) {
    Sheet sheet = Sheet.sound();
    sheet.ambient = air(ambient);
    sheet.maximum = 70;
    sheet.reachable = 70;

    Grade grade = Grade.of(sheet.measurement(), STRICT);

    assertThat(grade.verdict().code()).isEqualTo(verdict);
  }

  /**
   * On a day of the standard atmosphere (ISO 2533:1975, heights computed apart) nothing reaches 80
   * kPa above 1949 m, and nothing climbs by 65 kPa above 3591 m.
   */
  @ParameterizedTest
  @CsvSource({
    "80, 1948.5, fail",
    "80, 1949.5, invalid",
    "60, 3590.5, fail",
    "60, 3591.5, invalid",
  })
  void strictLimitsEndAtAHeight(double maximum, double metres, String verdict) {
    Criteria strict =
        new Criteria(
            "s",
            65,
            10,
            6,
            maximum,
            5,
            AltitudeRule.STRICT,
            DecisionRule.GUARDED,
            Equipment.UNKNOWN);
    Sheet sheet = Sheet.sound();
    sheet.open = 0;
    sheet.ambient = air(StandardAtmosphere.pascalsAt(metres) / 1_000);
    sheet.maximum = 50;
    sheet.reachable = 50;

    assertThat(Grade.of(sheet.measurement(), strict).verdict().code()).isEqualTo(verdict);
  }

  @Test
  void criteriaOutOfRangeAreRefused() {
    assertThatThrownBy(
            () ->
                new Criteria(
                    "x",
                    65,
                    10,
                    11,
                    80,
                    5,
                    AltitudeRule.SCALE,
                    DecisionRule.GUARDED,
                    Equipment.UNKNOWN))
        .hasMessage("usualRiseTimeFrom in s must be between 0.0 and 10.0, not 11.0");
    assertThatThrownBy(
            () ->
                new Criteria(
                    "x",
                    Double.NaN,
                    10,
                    6,
                    80,
                    5,
                    AltitudeRule.SCALE,
                    DecisionRule.GUARDED,
                    Equipment.UNKNOWN))
        .isInstanceOf(IllegalArgumentException.class);
  }
}
