package org.thumbseal.feed;

import java.io.EOFException;
import java.io.IOException;
import java.io.InputStream;
import java.nio.BufferUnderflowException;
import java.nio.ByteBuffer;
import java.nio.charset.StandardCharsets;
import java.util.HashMap;
import java.util.Map;
import java.util.OptionalLong;

/**
 * What a broker says to a sender.
 *
 * @param type of the packet, section 2.1.2 of MQTT 5.0
 * @param packetId of the message that is acknowledged; 0 in other packets
 * @param reason section 2.4; below 128 all is well
 * @param properties those with a number, by identifier, section 2.2.2.2
 * @param said the reason in the broker's words; empty where it gives none
 */
record MqttReply(int type, int packetId, int reason, Map<Integer, Long> properties, String said) {
  /** No answer to a sender needs as much. */
  private static final int LARGEST = 1 << 16;

  private static final int REASON_STRING = 0x1f;
  private static final int USER_PROPERTY = 0x26;
  private static final int MAXIMUM_QOS = 0x24;
  private static final int MAXIMUM_PACKET = 0x27;
  private static final int FIRST_ERROR = 0x80;
  private static final int LONGEST_NUMBER = 4;

  /** Keeps a copy of the map. */
  MqttReply {
    properties = Map.copyOf(properties);
  }

  boolean isGood() {
    return reason < FIRST_ERROR;
  }

  /** The largest packet that the broker takes, bytes. */
  OptionalLong largestPacket() {
    Long largest = properties.get(MAXIMUM_PACKET);
    return largest == null ? OptionalLong.empty() : OptionalLong.of(largest);
  }

  /** Whether the broker takes a message only without acknowledging it. */
  boolean acknowledgesNothing() {
    return properties.getOrDefault(MAXIMUM_QOS, 1L) == 0;
  }

  /** The reason in words. */
  String text() {
    return MqttReason.text(reason) + (said.isEmpty() ? "" : ": " + said);
  }

  /**
   * Reads the next packet.
   *
   * @throws IOException if the connection ends, or what comes is no MQTT 5
   */
  static MqttReply read(InputStream in) throws IOException {
    int first = in.read();
    int length = length(in);
    byte[] body = in.readNBytes(length);
    if (first < 0 || body.length < length) {
      throw new EOFException("the connection was closed");
    }
    try {
      return of(first >>> 4, ByteBuffer.wrap(body));
    } catch (BufferUnderflowException | IllegalArgumentException e) {
      throw new IOException("the answer is not MQTT 5");
    }
  }

  private static int length(InputStream in) throws IOException {
    int length = 0;
    for (int i = 0; i < LONGEST_NUMBER; i++) {
      int octet = in.read();
      if (octet < 0) {
        throw new EOFException("the connection was closed");
      }
      length |= (octet & 0x7f) << (7 * i);
      if (octet < 0x80) {
        return checked(length);
      }
    }
    throw new IOException("the answer is not MQTT 5");
  }

  private static int checked(int length) throws IOException {
    if (length > LARGEST) {
      throw new IOException("the answer is not MQTT 5, or too long");
    }
    return length;
  }

  private static MqttReply of(int type, ByteBuffer body) {
    int packetId = 0;
    if (type == MqttPackets.PUBACK) {
      packetId = body.getShort() & 0xffff;
    } else if (type == MqttPackets.CONNACK) {
      body.get();
    }
    // An acknowledgement or an end without a word means that all is well.
    int reason = body.hasRemaining() ? body.get() & 0xff : 0;
    Map<Integer, Long> numbers = new HashMap<>();
    String said = body.hasRemaining() ? properties(body, numbers) : "";
    return new MqttReply(type, packetId, reason, numbers, said);
  }

  /** Takes the numbers; gives the broker's words. */
  private static String properties(ByteBuffer body, Map<Integer, Long> numbers) {
    int length = (int) number(body);
    ByteBuffer left = body.slice().limit(length);
    String said = "";
    while (left.hasRemaining()) {
      int name = (int) number(left);
      switch (name) {
        case REASON_STRING -> said = text(left);
        case USER_PROPERTY -> pair(left);
        default -> numbers.putAll(value(name, left));
      }
    }
    return said;
  }

  /** Section 2.2.2.2, table 2-4; what is text is passed over. */
  private static Map<Integer, Long> value(int name, ByteBuffer in) {
    return switch (name) {
      case 0x01, 0x17, 0x19, 0x24, 0x25, 0x28, 0x29, 0x2a -> Map.of(name, in.get() & 0xffL);
      case 0x13, 0x21, 0x22, 0x23 -> Map.of(name, in.getShort() & 0xffffL);
      case 0x02, 0x11, 0x18, 0x27 -> Map.of(name, in.getInt() & 0xffff_ffffL);
      case 0x0b -> Map.of(name, number(in));
      case 0x03, 0x08, 0x09, 0x12, 0x15, 0x16, 0x1a, 0x1c -> {
        text(in);
        yield Map.of();
      }
      default -> throw new IllegalArgumentException("no property of MQTT 5: " + name);
    };
  }

  private static long number(ByteBuffer in) {
    long value = 0;
    for (int i = 0; i < LONGEST_NUMBER; i++) {
      int octet = in.get();
      value |= (long) (octet & 0x7f) << (7 * i);
      if (octet >= 0) {
        return value;
      }
    }
    throw new IllegalArgumentException("a number of more than four bytes");
  }

  private static void pair(ByteBuffer in) {
    text(in);
    text(in);
  }

  private static String text(ByteBuffer in) {
    byte[] bytes = new byte[in.getShort() & 0xffff];
    in.get(bytes);
    return new String(bytes, StandardCharsets.UTF_8);
  }
}
