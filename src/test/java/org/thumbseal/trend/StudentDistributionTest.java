package org.thumbseal.trend;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Percentage points as in Abramowitz and Stegun, table 26.10. */
class StudentDistributionTest {
  @ParameterizedTest
  @CsvSource({
    "1, 0.95, 12.706",
    "2, 0.95, 4.303",
    "3, 0.95, 3.182",
    "4, 0.99, 4.604",
    "5, 0.90, 2.015",
    "10, 0.95, 2.228",
    "30, 0.99, 2.750"
  })
  void agreesWithTheTable(int freedom, double probability, double expected) {
    StudentDistribution student = new StudentDistribution(freedom);

    assertThat(student.quantile(probability)).isCloseTo(expected, within(0.0006));
    assertThat(student.within(-expected)).isCloseTo(probability, within(0.0002));
  }
}
