package org.thumbseal.trend;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.Arrays;
import java.util.Random;
import org.junit.jupiter.api.Test;

class MedianTest {
  @Test
  void itIsTheMiddleOfTheSortedValues() {
    Random random = new Random(5);
    for (int n = 1; n < 400; n++) {
      int kinds = 1 + random.nextInt(n);
      double[] values = random.doubles(n, 0, kinds).toArray();
      if (n % 3 > 0) {
        values = Arrays.stream(values).map(Math::floor).toArray();
      }
      double[] before = values.clone();
      double[] sorted = values.clone();
      Arrays.sort(sorted);

      assertThat(Median.of(values)).as("%d values", n).isEqualTo(Median.ofSorted(sorted));
      assertThat(values).isEqualTo(before);
    }
  }

  @Test
  void valuesInOrderAreNoWorse() {
    double[] rising = new double[200_001];
    Arrays.setAll(rising, i -> i);
    assertThat(Median.of(rising)).isEqualTo(100_000);
    Arrays.setAll(rising, i -> -i);
    assertThat(Median.of(rising)).isEqualTo(-100_000);
    Arrays.fill(rising, 3);
    assertThat(Median.of(rising)).isEqualTo(3);
  }
}
