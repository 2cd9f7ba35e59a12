package org.thumbseal.feed;

import java.util.Locale;

/** Reason codes of MQTT 5.0, section 2.4, as far as a sender meets them. */
final class MqttReason {
  static final int NO_MATCHING_SUBSCRIBERS = 0x10;
  static final int TOPIC_NAME_INVALID = 0x90;
  static final int PACKET_TOO_LARGE = 0x95;
  static final int PAYLOAD_FORMAT_INVALID = 0x99;
  static final int QOS_NOT_SUPPORTED = 0x9b;

  private MqttReason() {}

  /** Whether it is the message that is refused, and would be at any other time too. */
  static boolean isOfMessage(int reason) {
    return reason == TOPIC_NAME_INVALID
        || reason == PACKET_TOO_LARGE
        || reason == PAYLOAD_FORMAT_INVALID;
  }

  /** What it means, and where there is something to do, what. */
  static String text(int reason) {
    return switch (reason) {
      case 0x01, 0x84 -> "does not speak MQTT 5; enable it there";
      case 0x02, 0x85 -> "does not take this client's name";
      case 0x04, 0x86 -> "refuses user name or password; look at the credentials file";
      case 0x05, 0x87 -> "does not allow this; let this user publish on the topic";
      case 0x88, 0x03 -> "is not available now";
      case 0x89 -> "is busy";
      case 0x8a -> "has banned this computer";
      case 0x8b -> "is shutting down";
      case 0x8d -> "heard nothing for too long";
      case 0x8e -> "is spoken to under the same name by somebody else";
      case TOPIC_NAME_INVALID -> "does not take this topic";
      case PACKET_TOO_LARGE -> "does not take a message as large as this";
      case 0x97 -> "has no room: a quota is exceeded";
      case PAYLOAD_FORMAT_INVALID -> "does not take this content";
      case QOS_NOT_SUPPORTED -> "does not acknowledge messages (QoS 1); enable it there";
      case 0x9c, 0x9d -> "has moved; name its new address";
      default -> String.format(Locale.ROOT, "answers with reason 0x%02X", reason);
    };
  }
}
