package org.thumbseal.page;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.net.Socket;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import org.awaitility.Awaitility;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.thumbseal.grade.Verdict;

/** Many at the door while a test is under way: it is graded from every sample. */
class CrowdTest {
  private static final String PORT = "sim:sound,seed=3,speed=10";
  private static final int IDLE = 1_000;
  private static final int SLOW = 100;
  private static final Duration PATIENCE = Duration.ofMinutes(2);

  @TempDir Path folder;
  private final List<Socket> crowd = new ArrayList<>();

  @AfterEach
  void goHome() throws IOException {
    for (Socket socket : crowd) {
      socket.close();
    }
  }

  private void come(int port, int number, String says) throws IOException {
    for (int i = 0; i < number; i++) {
      Socket socket = Raw.socket(port);
      crowd.add(socket);
      socket.getOutputStream().write(says.getBytes(StandardCharsets.UTF_8));
    }
  }

  private static void assertGraded(ServedBench bench) {
    Awaitility.await().atMost(PATIENCE).until(() -> !bench.results.isEmpty());
    var result = bench.results.get(0);
    assertThat(result.grade().verdict()).isEqualTo(Verdict.PASS);
    assertThat(result.evidence().gaps()).isZero();
    assertThat(result.evidence().rejected()).isEmpty();
  }

  @Test
  void idleConnectionsStopNeitherOthersNorTheGrading() throws Exception {
    try (ServedBench bench = ServedBench.alone(folder, PORT).start()) {
      come(bench.port(), IDLE, "");

      assertThat(Raw.get(bench.port(), "/")).startsWith("HTTP/1.1 200 ");
      assertGraded(bench);
      assertThat(Raw.get(bench.port(), "/page.js")).startsWith("HTTP/1.1 200 ");
    }
  }

  @Test
  void halfSentRequestsStopNeitherOthersNorTheGrading() throws Exception {
    try (ServedBench bench = ServedBench.alone(folder, PORT).start()) {
      come(bench.port(), SLOW, "GET / HTTP/1.1\r\nHost: ");

      assertThat(Raw.get(bench.port(), "/")).startsWith("HTTP/1.1 200 ");
      assertGraded(bench);
      for (Socket slow : crowd) {
        assertThat(slow.getInputStream().read()).as("the end, for who is too slow").isEqualTo(-1);
      }
    }
  }

  @Test
  void moreHalfSentRequestsThanThreadsAreForgottenInTime() throws Exception {
    try (ServedBench bench = ServedBench.alone(folder, PORT).start()) {
      come(bench.port(), 3 * SLOW, "POST /do/start HTTP/1.1\r\nHost: ");

      Awaitility.await()
          .atMost(PATIENCE)
          .ignoreExceptions()
          .until(() -> Raw.get(bench.port(), "/").startsWith("HTTP/1.1 200 "));
      assertGraded(bench);
    }
  }

  @Test
  void streamsAreBoundedAndAPageThatDoesNotReadIsGivenUp() throws Exception {
    String[] ports = {PORT, "sim:leak,seed=4,speed=10", "sim:sound,seed=5,speed=10"};
    try (ServedBench bench = ServedBench.alone(folder, ports).start()) {
      String events = "GET /events HTTP/1.1\r\nHost: " + Raw.host(bench.port()) + "\r\n\r\n";
      come(bench.port(), EventStreams.MOST, events);
      for (Socket page : crowd) {
        assertThat(Raw.firstLine(page)).startsWith("HTTP/1.1 200 ");
      }

      assertThat(Raw.get(bench.port(), "/events"))
          .startsWith("HTTP/1.1 503 ")
          .contains("\"too-many-pages\"");
      assertGraded(bench);
      goHome();
      Awaitility.await()
          .atMost(PATIENCE)
          .until(
              () -> {
                try (Socket page = Raw.socket(bench.port())) {
                  page.getOutputStream().write(events.getBytes(StandardCharsets.UTF_8));
                  return Raw.firstLine(page).startsWith("HTTP/1.1 200 ");
                }
              });
    }
  }
}
