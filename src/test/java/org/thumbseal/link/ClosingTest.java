package org.thumbseal.link;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Duration;
import java.util.concurrent.CountDownLatch;
import java.util.concurrent.atomic.AtomicBoolean;
import org.junit.jupiter.api.Test;

class ClosingTest {

  @Test
  void anActionThatEndsIsWaitedFor() {
    AtomicBoolean done = new AtomicBoolean();
    assertThat(Closing.within(Duration.ofSeconds(30), () -> done.set(true))).isTrue();
    assertThat(done).isTrue();
  }

  @Test
  void anActionThatHangsIsLeftToItself() {
    CountDownLatch never = new CountDownLatch(1);
    Runnable hanging =
        () -> {
          try {
            never.await();
          } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
          }
        };
    assertThat(Closing.within(Duration.ofMillis(20), hanging)).isFalse();
    never.countDown();
  }
}
