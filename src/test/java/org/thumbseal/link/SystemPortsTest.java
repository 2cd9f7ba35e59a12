package org.thumbseal.link;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.awaitility.Awaitility.await;

import java.time.Duration;
import java.util.List;
import java.util.concurrent.CountDownLatch;
import java.util.concurrent.atomic.AtomicInteger;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;

@Timeout(60)
class SystemPortsTest {
  private static final List<PortDescription> ONE = List.of(new PortDescription("COM3", "a port"));

  @Test
  void aSlowSystemIsNotWaitedForAndNotAskedTwice() {
    CountDownLatch answer = new CountDownLatch(1);
    AtomicInteger asked = new AtomicInteger();
    SystemPorts ports =
        new SystemPorts(
            () -> {
              asked.incrementAndGet();
              await().atMost(Duration.ofSeconds(30)).until(() -> answer.getCount() == 0);
              return ONE;
            },
            Duration.ofMillis(10));
    assertThatThrownBy(ports::list)
        .isInstanceOf(LinkUnavailable.class)
        .hasMessageContaining("slow to list its ports");
    assertThatThrownBy(ports::list).isInstanceOf(LinkUnavailable.class);
    answer.countDown();
    await()
        .atMost(Duration.ofSeconds(30))
        .ignoreExceptions()
        .untilAsserted(() -> assertThat(ports.list()).isEqualTo(ONE));
    assertThat(asked).hasValue(1);
  }

  @Test
  void aSystemThatFailsIsAskedAgainNextTime() throws Exception {
    AtomicInteger asked = new AtomicInteger();
    SystemPorts ports =
        new SystemPorts(
            () -> {
              if (asked.incrementAndGet() == 1) {
                throw new IllegalStateException("driver");
              }
              return ONE;
            },
            Duration.ofSeconds(30));
    assertThatThrownBy(ports::list)
        .isInstanceOf(LinkUnavailable.class)
        .hasMessage("the system does not list its ports; name one");
    assertThat(ports.list()).isEqualTo(ONE);
  }
}
