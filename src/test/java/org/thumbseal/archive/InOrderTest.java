package org.thumbseal.archive;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.CountDownLatch;
import java.util.concurrent.atomic.AtomicInteger;
import org.junit.jupiter.api.Test;

class InOrderTest {
  @Test
  void theOrderIsThatInWhichItWasGiven() {
    List<Integer> taken = new ArrayList<>();
    CountDownLatch second = new CountDownLatch(1);
    try (InOrder<Integer> work = new InOrder<>(taken::add)) {
      work.give(
          () -> {
            awaitUnlessAlone(second);
            return 1;
          });
      work.give(
          () -> {
            second.countDown();
            return 2;
          });
      work.finish();
    }

    assertThat(taken).containsExactly(1, 2);
  }

  /** With two threads the first piece ends after the second; with one it must not wait for it. */
  private static void awaitUnlessAlone(CountDownLatch latch) {
    try {
      if (Runtime.getRuntime().availableProcessors() > 1) {
        latch.await();
      }
    } catch (InterruptedException e) {
      throw new IllegalStateException(e);
    }
  }

  @Test
  void onlyAFewAreInTheMaking() {
    AtomicInteger given = new AtomicInteger();
    AtomicInteger taken = new AtomicInteger();
    int most = 8 * Runtime.getRuntime().availableProcessors();
    try (InOrder<Integer> work = new InOrder<>(i -> taken.incrementAndGet())) {
      for (int i = 0; i < 1_000; i++) {
        work.give(given::incrementAndGet);
        assertThat(i + 1 - taken.get()).isLessThanOrEqualTo(most);
      }
      work.finish();
    }

    assertThat(taken).hasValue(1_000);
  }

  @Test
  void anErrorOfOnePieceEndsTheWhole() {
    try (InOrder<Integer> work = new InOrder<>(i -> {})) {
      work.give(
          () -> {
            throw new OutOfMemoryError("as it were");
          });

      assertThatThrownBy(work::finish).isInstanceOf(OutOfMemoryError.class);
    }
  }
}
