package org.thumbseal.daemon;

import static org.assertj.core.api.Assertions.assertThat;
import static org.thumbseal.daemon.ScriptedLink.good;

import java.time.Duration;
import java.util.List;
import java.util.concurrent.CopyOnWriteArrayList;
import java.util.concurrent.CountDownLatch;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;

/** Reader and handler at different paces. */
@Timeout(60)
class DeliveryTest {
  private static final int SENT = 1_000;
  private static final Limits SMALL = new Limits(BackOff.STANDARD, Duration.ofSeconds(5), 16, true);

  private final ScriptedLink link = new ScriptedLink();
  private final List<String> changes = new CopyOnWriteArrayList<>();

  /** Takes nothing until it is let. */
  private static class Stuck extends Recorder {
    final CountDownLatch let = new CountDownLatch(1);

    @Override
    public void line(long hostMicros, String line) {
      try {
        let.await();
      } catch (InterruptedException e) {
        Thread.currentThread().interrupt();
      }
      super.line(hostMicros, line);
    }
  }

  private PortSupervisor start(SessionHandler handler) {
    PortSupervisor supervisor =
        new PortSupervisor(link, handler, new Surroundings(link.clock, changes::add, SMALL));
    supervisor.start();
    return supervisor;
  }

  private ScriptedLink.Step[] lines(CountDownLatch letAtEnd) {
    ScriptedLink.Step[] steps = new ScriptedLink.Step[SENT];
    for (int i = 0; i < SENT; i++) {
      steps[i] = link.bytes(good("S," + i + ",0,0") + "\n");
    }
    ScriptedLink.Step last = steps[SENT - 1];
    steps[SENT - 1] =
        buffer -> {
          letAtEnd.countDown();
          return last.read(buffer);
        };
    return steps;
  }

  private static List<String> inOrder(Recorder recorder) {
    return recorder.told.stream().filter(text -> text.contains("S,")).toList();
  }

  @Test
  void aFullQueueIsCountedToldAndNeverSilent() throws Exception {
    Stuck stuck = new Stuck();
    link.opening(lines(stuck.let));
    PortSupervisor supervisor = start(stuck);
    link.whenDone(supervisor::requestStop);
    supervisor.awaitEnd();
    long lost =
        stuck.told("lost ").stream().mapToLong(text -> Long.parseLong(text.substring(5))).sum();
    assertThat(lost).isPositive();
    assertThat(inOrder(stuck).size() + lost).isEqualTo(SENT);
    assertThat(stuck.told).last().asString().startsWith("closed");
    assertThat(inOrder(stuck)).isSubsetOf(expected(SENT)).doesNotHaveDuplicates();
  }

  private static List<String> expected(int count) {
    return IntStream.range(0, count).mapToObj(i -> "0 " + good("S," + i + ",0,0")).toList();
  }

  @Test
  void aFiniteSourceWaitsAndLosesNothing() throws Exception {
    Stuck stuck = new Stuck();
    link.thatEnds().opening(lines(new CountDownLatch(1)));
    PortSupervisor supervisor = start(stuck);
    stuck.let.countDown();
    supervisor.awaitEnd();
    assertThat(inOrder(stuck)).isEqualTo(expected(SENT));
    assertThat(stuck.told("lost ")).isEmpty();
  }

  @Test
  void aHandlerThatThrowsEndsItsPortAndIsStillToldTheEnd() throws Exception {
    Recorder failing =
        new Recorder() {
          @Override
          public void line(long hostMicros, String line) {
            throw new IllegalStateException("on purpose");
          }
        };
    link.opening(lines(new CountDownLatch(1)));
    PortSupervisor supervisor = start(failing);
    link.whenDone(supervisor::requestStop);
    supervisor.awaitEnd();
    assertThat(supervisor.outcome()).isEqualTo(PortOutcome.FAULT);
    assertThat(failing.told("opened")).hasSize(1);
    assertThat(failing.told("closed")).hasSize(1);
    assertThat(changes).filteredOn(text -> text.contains("fault")).hasSize(1);
  }

  @Test
  void aHandlerThatCannotEvenOpenIsNotToldTheEnd() throws Exception {
    Recorder failing =
        new Recorder() {
          @Override
          public void opened(java.time.Instant wallClock, String source) {
            throw new IllegalStateException("on purpose");
          }
        };
    link.opening(lines(new CountDownLatch(1)));
    PortSupervisor supervisor = start(failing);
    link.whenDone(supervisor::requestStop);
    supervisor.awaitEnd();
    assertThat(failing.told).isEmpty();
  }

  @Test
  void theHandlerMayAskForTheStopItself() throws Exception {
    PortSupervisor[] self = new PortSupervisor[1];
    Recorder enough =
        new Recorder() {
          @Override
          public void line(long hostMicros, String line) {
            super.line(hostMicros, line);
            self[0].requestStop();
          }
        };
    link.opening(endless());
    self[0] = new PortSupervisor(link, enough, new Surroundings(link.clock, changes::add, SMALL));
    self[0].start();
    self[0].awaitEnd();
    assertThat(self[0].outcome()).isEqualTo(PortOutcome.STOPPED);
    assertThat(enough.told).last().asString().endsWith("stopped");
  }

  private ScriptedLink.Step[] endless() {
    ScriptedLink.Step[] steps = new ScriptedLink.Step[200_000];
    java.util.Arrays.fill(steps, link.bytes(good("S,1,0,0") + "\n"));
    return steps;
  }
}
