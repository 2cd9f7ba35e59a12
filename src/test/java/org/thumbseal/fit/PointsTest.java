package org.thumbseal.fit;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import org.junit.jupiter.api.Test;

class PointsTest {
  @Test
  void keepsItsOwnCopy() {
    double[] x = {1, 2, 3};
    double[] y = {4, 5, 6};
    Points points = Points.of(x, y);
    x[0] = 99;
    y[0] = 99;
    assertThat(points.x(0)).isEqualTo(1);
    assertThat(points.y(0)).isEqualTo(4);
  }

  @Test
  void slicesFromInclusiveToExclusive() {
    Points middle = Points.of(new double[] {1, 2, 3}, new double[] {4, 5, 6}).slice(1, 2);
    assertThat(middle.size()).isEqualTo(1);
    assertThat(middle.x(0)).isEqualTo(2);
    assertThat(middle.y(0)).isEqualTo(5);
  }

  @Test
  void refusesWhatIsNoPair() {
    assertThatThrownBy(() -> Points.of(new double[1], new double[2]))
        .isInstanceOf(IllegalArgumentException.class);
    assertThatThrownBy(() -> Points.of(new double[] {Double.NaN}, new double[1]))
        .isInstanceOf(IllegalArgumentException.class);
    assertThatThrownBy(() -> Points.of(new double[1], new double[] {Double.POSITIVE_INFINITY}))
        .isInstanceOf(IllegalArgumentException.class);
  }
}
