package org.thumbseal.feed;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.util.HexFormat;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Packets of a broker, by MQTT Version 5.0 (OASIS Standard, 7 March 2019). */
class MqttReplyTest {
  private static MqttReply read(String hex) throws IOException {
    return MqttReply.read(new ByteArrayInputStream(HexFormat.of().parseHex(hex.replace(" ", ""))));
  }

  /** Section 3.4.2.1: a reason of success may be left out, and so may the properties. */
  @Test
  void acknowledgements() throws IOException {
    MqttReply shortest = read("40 02 12 34");
    assertThat(shortest.packetId()).isEqualTo(0x1234);
    assertThat(shortest.isGood()).isTrue();
    assertThat(read("40 03 00 01 10").reason()).isEqualTo(MqttReason.NO_MATCHING_SUBSCRIBERS);
    MqttReply said = read("40 10 00 01 97 0c 1f 00 04 66 75 6c 6c 26 00 00 00 00");
    assertThat(said.isGood()).isFalse();
    assertThat(said.text()).isEqualTo("has no room: a quota is exceeded: full");
  }

  /** Section 3.2.2: every property that a broker may state; two are looked at. */
  @Test
  void aWelcomeWithAllItsProperties() throws IOException {
    String properties =
        "11 00 00 00 0a 21 00 14 24 01 25 00 27 00 00 2e e0 12 00 01 61 22 00 0a 1f 00 00"
            + " 26 00 01 6b 00 01 76 28 01 29 01 2a 01 13 00 3c 1a 00 01 72 1c 00 01 73"
            + " 15 00 01 6d 16 00 02 00 ff";
    int length = properties.replace(" ", "").length() / 2;
    HexFormat hex = HexFormat.of();
    String packet =
        "20" + hex.toHexDigits((byte) (length + 3)) + "00 00" + hex.toHexDigits((byte) length);
    MqttReply reply = read(packet + properties);
    assertThat(reply.type()).isEqualTo(MqttPackets.CONNACK);
    assertThat(reply.largestPacket()).hasValue(12_000);
    assertThat(reply.acknowledgesNothing()).isFalse();
  }

  /**
   * A broker of version 3.1.1 refuses this version in the form of its own (its section 3.2.2.3).
   */
  @Test
  void anOlderBroker() throws IOException {
    assertThat(read("20 02 00 01").text()).isEqualTo("does not speak MQTT 5; enable it there");
  }

  @ParameterizedTest
  @CsvSource({
    "'', the connection was closed",
    "40, the connection was closed",
    "40 02 00, the connection was closed",
    "40 01 00, the answer is not MQTT 5",
    "40 ff ff ff ff 01, the answer is not MQTT 5",
    "'40 ff ff 7f', 'the answer is not MQTT 5, or too long'",
    "40 05 00 01 00 01 77, the answer is not MQTT 5",
    "40 04 00 01 00 09, the answer is not MQTT 5",
    "40 07 00 01 00 03 1f ff ff, the answer is not MQTT 5",
    "48 54 54 50 2f 31, the connection was closed",
  })
  void whatIsNone(String hex, String why) {
    assertThatThrownBy(() -> read(hex)).isInstanceOf(IOException.class).hasMessage(why);
  }

  @Test
  void whateverComesItIsAPacketOrTrouble() {
    Random random = new Random(6);
    int read = 0;
    for (int i = 0; i < 200_000; i++) {
      byte[] bytes = new byte[random.nextInt(24)];
      random.nextBytes(bytes);
      if (bytes.length > 1) {
        bytes[1] = (byte) (bytes.length - 2);
      }
      try {
        read += MqttReply.read(new ByteArrayInputStream(bytes)).text().isEmpty() ? 0 : 1;
      } catch (IOException e) {
        assertThat(e).hasMessageMatching("the (answer is not MQTT 5.*|connection was closed)");
      }
    }
    assertThat(read).isGreaterThan(1000);
  }
}
