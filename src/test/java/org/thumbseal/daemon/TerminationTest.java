package org.thumbseal.daemon;

import static org.assertj.core.api.Assertions.assertThat;
import static org.thumbseal.daemon.ScriptedLink.good;

import java.io.BufferedReader;
import java.io.InputStreamReader;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.time.Instant;
import java.util.Collections;
import java.util.List;
import java.util.concurrent.CountDownLatch;
import java.util.concurrent.TimeUnit;
import java.util.stream.Collectors;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.condition.EnabledOnOs;
import org.junit.jupiter.api.condition.OS;
import org.junit.jupiter.api.io.TempDir;
import org.thumbseal.link.HostClock;
import org.thumbseal.link.LinkAddress;
import org.thumbseal.link.Links;
import org.thumbseal.link.PtyPair;

/** A process of its own that is told to end while it reads a serial port. */
@Timeout(60)
@EnabledOnOs(value = OS.LINUX, disabledReason = "skipped: pseudo-terminals of socat are for Linux")
class TerminationTest {
  private static final int SIGTERM_EXIT = 128 + 15;

  @TempDir Path folder;

  /** Prints what the handler is told. */
  static final class Program extends Recorder {
    private final CountDownLatch closed = new CountDownLatch(1);

    public static void main(String[] args) throws Exception {
      Program program = new Program();
      Links links =
          new Links((kind, seed) -> Collections.emptyIterator(), System.in, HostClock.system());
      Surroundings surroundings =
          new Surroundings(HostClock.system(), System.out::println, Limits.STANDARD);
      PortSupervisor port =
          new PortSupervisor(links.to(LinkAddress.parse(args[0])), program, surroundings);
      Daemon daemon = new Daemon(List.of(port));
      // Waits for the library to close the port first, which by itself it does only now and then.
      Runtime.getRuntime().addShutdownHook(new Thread(program::awaitClosed));
      daemon.start();
      daemon.awaitEnd();
    }

    private void awaitClosed() {
      try {
        closed.await(30, TimeUnit.SECONDS);
      } catch (InterruptedException e) {
        Thread.currentThread().interrupt();
      }
    }

    @Override
    public void opened(Instant wallClock, String source) {
      System.out.println("opened");
    }

    @Override
    public void line(long hostMicros, String line) {
      System.out.println("line");
    }

    @Override
    public void closed(long hostMicros, String why) {
      System.out.println("closed: " + why);
      closed.countDown();
    }
  }

  @Test
  void aPortThatTheLibraryClosesOnTheWayOutIsStoppedAndNotLost() throws Exception {
    try (PtyPair pair = PtyPair.in(folder)) {
      String java = Path.of(System.getProperty("java.home"), "bin", "java").toString();
      String classes = System.getProperty("java.class.path");
      Process process =
          new ProcessBuilder(java, "-cp", classes, Program.class.getName(), pair.port())
              .redirectErrorStream(true)
              .start();
      BufferedReader said =
          new BufferedReader(
              new InputStreamReader(process.getInputStream(), StandardCharsets.UTF_8));
      assertThat(said.readLine()).isEqualTo("opened");
      pair.send((good("S,1,2,3") + "\n").getBytes(StandardCharsets.US_ASCII));
      String heard = said.readLine() + "\n" + said.readLine();
      assertThat(heard).contains("line").contains("a sensor is speaking");
      process.toHandle().destroy();
      String rest = said.lines().collect(Collectors.joining("\n"));
      assertThat(rest).isEqualTo("closed: stopped");
      assertThat(process.waitFor()).isEqualTo(SIGTERM_EXIT);
    }
  }
}
