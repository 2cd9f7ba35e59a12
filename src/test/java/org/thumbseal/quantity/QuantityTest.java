package org.thumbseal.quantity;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class QuantityTest {
  @Test
  void expandsItsUncertaintyByTwo() {
    assertThat(Quantity.seconds(7.42, 0.055).expandedUncertainty()).isEqualTo(0.11);
    assertThat(Quantity.kilopascals(80, 0)).isEqualTo(new Quantity(80, "kPa", 0));
  }

  @ParameterizedTest
  @CsvSource({"NaN, 1", "Infinity, 1", "1, NaN", "1, -0.1", "1, Infinity"})
  void refusesWhatIsNoNumber(double value, double uncertainty) {
    assertThatThrownBy(() -> Quantity.seconds(value, uncertainty))
        .isInstanceOf(IllegalArgumentException.class);
  }
}
