package org.thumbseal.feed;

import java.io.ByteArrayOutputStream;
import java.nio.charset.StandardCharsets;
import java.util.Optional;
import org.thumbseal.seal.Login;

/**
 * What a sender says to a broker: the packets of MQTT Version 5.0 (OASIS Standard, 7 March 2019)
 * that are needed to publish with QoS 1, numbers of sections from there.
 */
final class MqttPackets {
  static final int CONNACK = 2;
  static final int PUBACK = 4;
  static final int DISCONNECT = 14;

  private static final int CONNECT_FIRST = 0x10;
  private static final int PUBLISH_QOS_1 = 0x32;
  private static final int DISCONNECT_FIRST = 0xe0;
  private static final int VERSION = 5;

  private static final int CLEAN_START = 0x02;
  private static final int WITH_PASSWORD = 0x40;
  private static final int WITH_USER = 0x80;

  private static final int IS_UTF_8 = 0x01;
  private static final int CONTENT_TYPE = 0x03;
  private static final int USER_PROPERTY = 0x26;

  private static final int SEVEN_BITS = 0x7f;
  private static final int MORE = 0x80;

  private MqttPackets() {}

  /** Section 3.1: a session that begins anew and ends with the connection. */
  static byte[] connect(String client, Optional<Login> login, int keepAliveSeconds) {
    ByteArrayOutputStream body = new ByteArrayOutputStream();
    text(body, "MQTT");
    body.write(VERSION);
    body.write(
        CLEAN_START
            | (login.isPresent() ? WITH_PASSWORD : 0)
            | (login.flatMap(Login::user).isPresent() ? WITH_USER : 0));
    twoBytes(body, keepAliveSeconds);
    number(body, 0);
    text(body, client);
    login.flatMap(Login::user).ifPresent(user -> text(body, user));
    login.ifPresent(l -> text(body, l.secret()));
    return packet(CONNECT_FIRST, body);
  }

  /** Section 3.3: not retained; what the document is stands in user properties. */
  static byte[] publish(int packetId, String topic, Parcel parcel) {
    ByteArrayOutputStream body = new ByteArrayOutputStream();
    text(body, topic);
    twoBytes(body, packetId);
    byte[] properties = properties(parcel.label());
    number(body, properties.length);
    body.writeBytes(properties);
    body.writeBytes(parcel.bytes());
    return packet(PUBLISH_QOS_1, body);
  }

  private static byte[] properties(Parcel.Label label) {
    ByteArrayOutputStream out = new ByteArrayOutputStream();
    out.write(IS_UTF_8);
    out.write(1);
    out.write(CONTENT_TYPE);
    text(out, "application/json");
    property(out, "id", label.id());
    property(out, "kind", label.kind());
    property(out, "schema", label.schema());
    return out.toByteArray();
  }

  private static void property(ByteArrayOutputStream out, String name, String value) {
    out.write(USER_PROPERTY);
    text(out, name);
    text(out, value);
  }

  /** Section 3.14: an end in order. */
  static byte[] disconnect() {
    return packet(DISCONNECT_FIRST, new ByteArrayOutputStream());
  }

  private static byte[] packet(int first, ByteArrayOutputStream body) {
    ByteArrayOutputStream out = new ByteArrayOutputStream(body.size() + 5);
    out.write(first);
    number(out, body.size());
    out.writeBytes(body.toByteArray());
    return out.toByteArray();
  }

  private static void twoBytes(ByteArrayOutputStream out, int value) {
    out.write(value >>> 8);
    out.write(value);
  }

  /** Section 1.5.5: seven bits at a time, the lowest first. */
  private static void number(ByteArrayOutputStream out, int value) {
    int left = value;
    while (left > SEVEN_BITS) {
      out.write((left & SEVEN_BITS) | MORE);
      left >>>= 7;
    }
    out.write(left);
  }

  /** Section 1.5.4. No text here comes near the 65535 bytes that fit. */
  private static void text(ByteArrayOutputStream out, String text) {
    byte[] bytes = text.getBytes(StandardCharsets.UTF_8);
    if (bytes.length > 0xffff) {
      throw new IllegalArgumentException("a text of " + bytes.length + " bytes");
    }
    twoBytes(out, bytes.length);
    out.writeBytes(bytes);
  }
}
