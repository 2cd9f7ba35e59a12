package org.thumbseal.feed;

import com.hivemq.client.mqtt.datatypes.MqttUtf8String;
import com.hivemq.client.mqtt.exceptions.MqttEncodeException;
import com.hivemq.client.mqtt.mqtt5.exceptions.Mqtt5ConnAckException;
import com.hivemq.client.mqtt.mqtt5.exceptions.Mqtt5DisconnectException;
import com.hivemq.client.mqtt.mqtt5.exceptions.Mqtt5PubAckException;
import com.hivemq.client.mqtt.mqtt5.message.connect.connack.Mqtt5ConnAck;
import com.hivemq.client.mqtt.mqtt5.message.disconnect.Mqtt5Disconnect;
import com.hivemq.client.mqtt.mqtt5.message.publish.puback.Mqtt5PubAck;
import java.io.IOException;
import java.util.Optional;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;

/** A broker that cannot be spoken to, or that does not take a document: why, for a person. */
final class MqttTrouble extends Exception {
  private static final long serialVersionUID = 1L;

  private final boolean ofMessage;

  private MqttTrouble(String why, boolean ofMessage) {
    super(why);
    this.ofMessage = ofMessage;
  }

  /** What the broker answers, and the reason in its own words where it gives one. */
  static MqttTrouble ofBroker(int reason, String said) {
    String why = "the broker " + MqttReason.text(reason) + (said.isEmpty() ? "" : ": " + said);
    return new MqttTrouble(why, MqttReason.isOfMessage(reason));
  }

  static MqttTrouble noAnswer() {
    return connection("there was no answer in time");
  }

  private static MqttTrouble connection(String why) {
    return new MqttTrouble(why, false);
  }

  /** What the client makes of it; the first of its causes that says something decides. */
  static MqttTrouble of(@Nullable Throwable failure) {
    return causes(failure)
        .flatMap(e -> known(e).stream())
        .findFirst()
        .orElseGet(() -> connection(NetworkTrouble.text(new IOException(last(failure)))));
  }

  private static Stream<Throwable> causes(@Nullable Throwable failure) {
    return Stream.iterate(failure, e -> e != null, e -> e == null ? null : e.getCause())
        .flatMap(Stream::ofNullable);
  }

  private static @Nullable String last(@Nullable Throwable failure) {
    return causes(failure)
        .reduce((first, second) -> second)
        .map(Throwable::getMessage)
        .orElse(null);
  }

  private static Optional<MqttTrouble> known(Throwable e) {
    if (e instanceof Mqtt5ConnAckException refusal) {
      Mqtt5ConnAck m = refusal.getMqttMessage();
      return broker(m.getReasonCode().getCode(), m.getReasonString());
    }
    if (e instanceof Mqtt5PubAckException refusal) {
      Mqtt5PubAck m = refusal.getMqttMessage();
      return broker(m.getReasonCode().getCode(), m.getReasonString());
    }
    if (e instanceof Mqtt5DisconnectException end) {
      return ended(end);
    }
    if (e instanceof MqttEncodeException) {
      return Optional.of(ofBroker(MqttReason.PACKET_TOO_LARGE, ""));
    }
    return e instanceof IOException io
        ? Optional.of(connection(NetworkTrouble.text(io)))
        : Optional.empty();
  }

  private static Optional<MqttTrouble> broker(int reason, Optional<MqttUtf8String> said) {
    return Optional.of(ofBroker(reason, said.map(MqttUtf8String::toString).orElse("")));
  }

  /** Where what comes is no MQTT 5 the client ends the connection, and says so in the same way. */
  private static Optional<MqttTrouble> ended(Mqtt5DisconnectException e) {
    Mqtt5Disconnect m = e.getMqttMessage();
    return switch (m.getReasonCode()) {
      case MALFORMED_PACKET, PROTOCOL_ERROR ->
          Optional.of(connection("the connection was lost: " + e.getMessage()));
      default -> broker(m.getReasonCode().getCode(), m.getReasonString());
    };
  }

  /** What that means for the document. */
  Answer answer() {
    String why = String.valueOf(getMessage());
    return ofMessage ? new Answer.Refused(why) : new Answer.Trouble(why);
  }
}
