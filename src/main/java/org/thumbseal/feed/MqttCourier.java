package org.thumbseal.feed;

import java.io.IOException;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import org.thumbseal.link.HostClock;

/**
 * Brings documents to a broker: connects for the first, keeps the connection until all are sent.
 */
final class MqttCourier implements Courier {
  private final FeedTarget target;
  private final String client;
  private final HostClock clock;
  private @Nullable MqttConnection connection;

  MqttCourier(FeedTarget target, String client, HostClock clock) {
    this.target = target;
    this.client = client;
    this.clock = clock;
  }

  @Override
  public Answer deliver(Parcel parcel) {
    try {
      Optional<MqttReply> reply = connected().publish(topic(parcel.label()), parcel);
      return reply
          .map(this::answer)
          .orElse(new Answer.Refused("the broker " + MqttReason.text(MqttReason.PACKET_TOO_LARGE)));
    } catch (IOException e) {
      rest();
      return new Answer.Trouble(NetworkTrouble.text(e));
    }
  }

  private MqttConnection connected() throws IOException {
    MqttConnection there = connection;
    if (there == null) {
      there = MqttConnection.open(target, client, clock);
      connection = there;
    }
    return there;
  }

  private String topic(Parcel.Label label) {
    return target.topic() + "/" + SafeName.of(label.kind()) + "/" + SafeName.of(label.subject());
  }

  private Answer answer(MqttReply reply) {
    if (reply.type() == MqttPackets.DISCONNECT) {
      rest();
    }
    String why = "the broker " + reply.text();
    if (MqttReason.isOfMessage(reply.reason())) {
      return new Answer.Refused(why);
    }
    if (!reply.isGood() || reply.type() == MqttPackets.DISCONNECT) {
      return new Answer.Trouble(why);
    }
    return reply.reason() == MqttReason.NO_MATCHING_SUBSCRIBERS && target.needsSubscriber()
        ? new Answer.Trouble(
            "nobody has subscribed, and the broker would drop it; subscribe to "
                + target.topic()
                + "/#")
        : new Answer.Accepted();
  }

  @Override
  public void rest() {
    MqttConnection there = connection;
    if (there != null) {
      there.close();
      connection = null;
    }
  }
}
