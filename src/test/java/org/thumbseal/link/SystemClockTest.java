package org.thumbseal.link;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatCode;

import java.time.Duration;
import org.junit.jupiter.api.Test;

class SystemClockTest {
  private final HostClock clock = HostClock.system();

  @Test
  void doesNotWaitForAMomentThatIsPast() {
    assertThatCode(() -> clock.pause(Duration.ofNanos(-1))).doesNotThrowAnyException();
    assertThatCode(() -> clock.pause(Duration.ofHours(-1))).doesNotThrowAnyException();
  }

  @Test
  void handsAnInterruptionOn() {
    Thread.currentThread().interrupt();
    clock.pause(Duration.ofHours(1));
    assertThat(Thread.interrupted()).isTrue();
  }
}
