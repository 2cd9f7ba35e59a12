package org.thumbseal.calibration;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;

class SteadyReadingTest {
  private final SteadyReading steady = new SteadyReading();
  private double now;

  private void read(double seconds, double from, double to) {
    int count = (int) Math.round(seconds * 50);
    for (int i = 0; i < count; i++, now += 0.02) {
      steady.accept(now, from + (to - from) * i / count);
    }
  }

  @Test
  void isTheMeanOfTwoSecondsThatStandStill() {
    read(1.5, 40, 40);
    assertThat(steady.settled()).isEmpty();
    read(1, 40.04, 40.04);
    assertThat(steady.settled().orElseThrow()).isCloseTo(40.02, within(0.005));
  }

  @Test
  void isNoneWhileTheVacuumMovesAndAfterAGap() {
    read(3, 40, 41);
    assertThat(steady.settled()).isEmpty();
    read(3, 41, 41);
    assertThat(steady.settled()).isPresent();
    now += 1;
    read(1, 41, 41);
    assertThat(steady.settled()).isEmpty();
  }
}
