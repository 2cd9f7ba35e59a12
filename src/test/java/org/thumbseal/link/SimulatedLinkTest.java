package org.thumbseal.link;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.nio.charset.StandardCharsets;
import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.thumbseal.link.LinkUnavailable.Reason;
import org.thumbseal.link.SimulatedSensor.TimedLine;

class SimulatedLinkTest {
  private final ManualClock clock = new ManualClock();

  private Link link(double speed) {
    SimulatedSensor two =
        (kind, seed) -> {
          if (!kind.equals("sound")) {
            throw new LinkUnavailable(Reason.UNKNOWN, "there is only sound");
          }
          return List.of(new TimedLine(0, "first" + seed), new TimedLine(700_000, "second"))
              .iterator();
        };
    return new SimulatedLink(new LinkAddress.Simulated("sim:sound", "sound", 3, speed), two, clock);
  }

  private List<String> arrivals(Link link) throws LinkUnavailable {
    List<String> seen = new ArrayList<>();
    byte[] buffer = new byte[64];
    try (LinkConnection connection = link.open()) {
      for (int count = 0; count != LinkConnection.LOST; count = connection.read(buffer)) {
        if (count > 0) {
          String text = new String(buffer, 0, count, StandardCharsets.ISO_8859_1);
          seen.add(clock.nanos() / 1_000_000 + " " + text.strip());
        }
      }
    }
    return seen;
  }

  @Test
  void linesComeAtTheirTime() throws Exception {
    assertThat(arrivals(link(1))).containsExactly("0 first3", "700 second");
  }

  @Test
  void noReadWaitsLongerThanAThirdOfASecond() throws Exception {
    arrivals(link(1));
    assertThat(clock.pauses())
        .containsExactly(Duration.ofMillis(250), Duration.ofMillis(250), Duration.ofMillis(200));
  }

  @Test
  void speedShortensTheWait() throws Exception {
    assertThat(arrivals(link(10))).containsExactly("0 first3", "70 second");
  }

  @Test
  void linesArriveWhenTheSimulatorSaysHoweverLateTheyAreRead() throws Exception {
    try (LinkConnection connection = link(10).open()) {
      clock.advance(Duration.ofSeconds(9));
      assertThat(connection.arrivedMicros()).hasValue(0);
      LinkContract.read(connection, 14, 4);
      assertThat(connection.arrivedMicros()).hasValue(700_000);
    }
  }

  @Test
  void itsTimeRunsFromTheOpening() throws Exception {
    try (LinkConnection connection = link(10).open()) {
      clock.advance(Duration.ofMillis(500));
      assertThat(connection.age()).isEqualTo(Duration.ofMillis(500));
    }
  }

  @Test
  void aSmallBufferLosesNothing() throws Exception {
    try (LinkConnection connection = link(1).open()) {
      assertThat(LinkContract.read(connection, 14, 4))
          .asString(StandardCharsets.US_ASCII)
          .isEqualTo("first3\nsecond\n");
    }
  }

  @Test
  void anUnknownKindIsTheSimulatorsToRefuse() {
    SimulatedSensor none =
        (kind, seed) -> {
          throw new LinkUnavailable(Reason.UNKNOWN, "no kind " + kind);
        };
    Link link = new SimulatedLink(new LinkAddress.Simulated("sim:odd", "odd", 1, 1), none, clock);
    assertThatThrownBy(link::open).isInstanceOf(LinkUnavailable.class).hasMessage("no kind odd");
  }
}
