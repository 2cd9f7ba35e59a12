package org.thumbseal.daemon;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.time.Duration;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class BackOffTest {

  @ParameterizedTest
  @CsvSource({"1, 1, 1", "2, 2, 2", "3, 4, 4", "4, 8, 4", "5, 10, 4", "2147483647, 10, 4"})
  void waitsDoubleUpToTheLongest(int failures, long there, long absent) {
    assertThat(BackOff.STANDARD.after(failures, true)).hasSeconds(there);
    assertThat(BackOff.STANDARD.after(failures, false)).hasSeconds(absent);
  }

  @Test
  void waitsThatWouldShrinkAreRefused() {
    Duration second = Duration.ofSeconds(1);
    assertThatThrownBy(() -> new BackOff(second, Duration.ofMillis(1)))
        .isInstanceOf(IllegalArgumentException.class);
    assertThatThrownBy(() -> new BackOff(Duration.ZERO, second))
        .isInstanceOf(IllegalArgumentException.class);
  }
}
