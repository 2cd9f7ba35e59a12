package org.thumbseal.feed;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.charset.StandardCharsets;
import java.time.Duration;
import java.util.HexFormat;
import java.util.List;
import java.util.Optional;
import org.awaitility.Awaitility;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.thumbseal.seal.TlsTrust;

/** What becomes of the answers of a broker, by MQTT Version 5.0 (OASIS Standard, 7 March 2019). */
@Timeout(120)
class MqttCourierTest {
  private static final String WELCOME = "20 03 00 00 00";
  private static final Duration LONG = Duration.ofSeconds(30);

  private static Answer answer(Duration patience, String... answers) throws Exception {
    try (ScriptedBroker broker = ScriptedBroker.answering(List.of(answers));
        Courier courier = courier(broker.address(), patience)) {
      return courier.deliver(parcel());
    }
  }

  private static Courier courier(String address, Duration patience) throws Exception {
    var target =
        new FeedTarget(
            FeedAddress.parse(address), "t", Optional.empty(), TlsTrust.of(Optional.empty()), true);
    return new MqttCourier(target, "bench", patience);
  }

  private static Parcel parcel() {
    byte[] bytes = "{}".repeat(100).getBytes(StandardCharsets.UTF_8);
    return new Parcel(bytes, new Parcel.Label("1", "occlusion-test", "s/1", "SP-014"));
  }

  /** Section 3.4.2.1: a reason of success may be left out, and so may the properties. */
  @ParameterizedTest
  @CsvSource({
    WELCOME + ", 40 02 00 01",
    WELCOME + ", 40 03 00 01 00",
  })
  void whatIsTaken(String welcome, String acknowledgement) throws Exception {
    assertThat(answer(LONG, welcome, acknowledgement)).isEqualTo(new Answer.Accepted());
  }

  /** Section 3.2.2: every property that a broker may state. */
  @Test
  void aWelcomeWithAllItsProperties() throws Exception {
    String properties =
        "11 00 00 00 00 21 00 14 25 00 27 00 00 2e e0 22 00 0a 1f 00 00 26 00 01 6b 00 01 76"
            + " 28 01 29 01 2a 01 13 00 3c 1c 00 01 73";
    int length = properties.replace(" ", "").length() / 2;
    HexFormat hex = HexFormat.of();
    String lengths = hex.toHexDigits((byte) (length + 3)) + "0000" + hex.toHexDigits((byte) length);
    assertThat(answer(LONG, "20" + lengths + properties, "40 02 00 01"))
        .isEqualTo(new Answer.Accepted());
  }

  @ParameterizedTest
  @CsvSource({
    "20 03 00 87 00, 'the broker does not allow this; let this user publish on the topic'",
    "20 03 00 86 00, 'the broker refuses user name or password; look at the credentials file'",
    "20 09 00 89 06 1f 00 03 66 75 6c, 'the broker is busy: ful'",
    // Version 3.1.1 refuses this version in the form of its own (its section 3.2.2.3).
    "20 02 00 01, 'the broker does not speak MQTT 5; enable it there'",
    "20 05 00 00 02 24 00, 'the broker does not acknowledge messages (QoS 1); enable it there'",
    "'', 'the connection was lost: Server closed connection without DISCONNECT.'",
  })
  void whereOneIsNotLetIn(String welcome, String why) throws Exception {
    assertThat(answer(LONG, welcome)).isEqualTo(new Answer.Trouble(why));
  }

  @ParameterizedTest
  @CsvSource({
    "40 10 00 01 97 0c 1f 00 04 66 75 6c 6c 26 00 00 00 00,"
        + " 'the broker has no room: a quota is exceeded: full'",
    "40 03 00 01 10," + " 'nobody has subscribed, and the broker would drop it; subscribe to t/#'",
    "e0 02 8b 00, 'the broker is shutting down'",
    "'', 'the connection was lost: Server closed connection without DISCONNECT.'",
    "40 04 00 01 00 09,"
        + " 'the connection was lost: Exception while decoding PUBACK: remaining length too short'",
    "40 03 00 07 00, 'the connection was lost: PUBACK contained unknown packet identifier'",
  })
  void whatIsTriedAgain(String answer, String why) throws Exception {
    assertThat(answer(LONG, WELCOME, answer)).isEqualTo(new Answer.Trouble(why));
  }

  @ParameterizedTest
  @CsvSource({
    WELCOME + ", 40 04 00 01 90 00, the broker does not take this topic",
    WELCOME + ", 40 04 00 01 99 00, the broker does not take this content",
    WELCOME + ", e0 02 95 00, the broker does not take a message as large as this",
    // It has said so, 200 bytes, and is not sent more.
    "20 08 00 00 05 27 00 00 00 c8, '', the broker does not take a message as large as this",
  })
  void whatIsRefusedForGood(String welcome, String answer, String why) throws Exception {
    assertThat(answer(LONG, welcome, answer)).isEqualTo(new Answer.Refused(why));
  }

  @Test
  void oneThatSaysNothingIsNotWaitedForWithoutEnd() throws Exception {
    Duration shortly = Duration.ofMillis(300);
    assertThat(answer(shortly)).isEqualTo(new Answer.Trouble("there was no answer in time"));
    assertThat(answer(Duration.ofSeconds(5), WELCOME))
        .isEqualTo(new Answer.Trouble("there was no answer in time"));
  }

  @Test
  void itsThreadEndsWithTheConnection() throws Exception {
    try (ScriptedBroker broker = ScriptedBroker.answering(List.of(WELCOME, "40 02 00 01", ""));
        Courier courier = courier(broker.address(), LONG)) {
      assertThat(courier.deliver(parcel())).isEqualTo(new Answer.Accepted());
      assertThat(threads()).isPositive();
      courier.rest();
      Awaitility.await().atMost(LONG).until(() -> threads() == 0);
    }
  }

  private static long threads() {
    return Thread.getAllStackTraces().keySet().stream()
        .filter(thread -> thread.getName().equals("feed-mqtt"))
        .count();
  }

  @Test
  void oneThatIsNotThere() throws Exception {
    try (Courier courier = courier("mqtt://127.0.0.1:" + Broker.freePort(), LONG)) {
      assertThat(courier.deliver(parcel()))
          .isInstanceOfSatisfying(
              Answer.Trouble.class,
              t -> assertThat(t.why()).startsWith("cannot be reached: Connection refused"));
    }
    try (Courier courier = courier("mqtt://no-such-host.invalid", LONG)) {
      assertThat(courier.deliver(parcel()))
          .isEqualTo(new Answer.Trouble("the name of the host is not known; is there a network?"));
    }
  }
}
