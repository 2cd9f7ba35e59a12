package org.thumbseal.feed;

import java.time.Duration;
import org.jspecify.annotations.Nullable;

/**
 * Brings documents to a broker: connects for the first, keeps the connection until all are sent.
 */
final class MqttCourier implements Courier {
  private final FeedTarget target;
  private final String client;
  private final Duration patience;
  private @Nullable MqttConnection connection;

  MqttCourier(FeedTarget target, String client) {
    this(target, client, MqttConnection.PATIENCE);
  }

  MqttCourier(FeedTarget target, String client, Duration patience) {
    this.target = target;
    this.client = client;
    this.patience = patience;
  }

  @Override
  public Answer deliver(Parcel parcel) throws InterruptedException {
    try {
      return answer(connected().publish(topic(parcel.label()), parcel));
    } catch (MqttTrouble e) {
      Answer answer = e.answer();
      if (answer instanceof Answer.Trouble) {
        rest();
      }
      return answer;
    }
  }

  private MqttConnection connected() throws MqttTrouble, InterruptedException {
    MqttConnection there = connection;
    if (there == null || !there.isOpen()) {
      there = MqttConnection.open(target, client, patience);
      connection = there;
    }
    return there;
  }

  private String topic(Parcel.Label label) {
    return target.topic() + "/" + SafeName.of(label.kind()) + "/" + SafeName.of(label.subject());
  }

  private Answer answer(int reason) {
    return reason == MqttReason.NO_MATCHING_SUBSCRIBERS && target.needsSubscriber()
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
