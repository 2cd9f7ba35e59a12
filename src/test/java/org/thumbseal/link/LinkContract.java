package org.thumbseal.link;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;

/** What every link promises, whatever stands behind it. */
abstract class LinkContract {

  /** A link, and the hand on its other end. */
  interface FarEnd extends AutoCloseable {
    Link link();

    void send(byte[] bytes) throws IOException;

    /** Ends it: no more bytes will come. */
    void end() throws IOException;

    @Override
    default void close() throws IOException {}
  }

  abstract FarEnd farEnd() throws Exception;

  static byte[] allBytes() {
    byte[] bytes = new byte[3_000];
    new SplittableRandom(7).nextBytes(bytes);
    for (int i = 0; i < 256; i++) {
      bytes[i] = (byte) i;
    }
    return bytes;
  }

  static byte[] read(LinkConnection connection, int wanted, int bufferSize) {
    ByteArrayOutputStream all = new ByteArrayOutputStream();
    byte[] buffer = new byte[bufferSize];
    int count = 0;
    while (all.size() < wanted && count >= 0) {
      count = connection.read(buffer);
      all.write(buffer, 0, Math.max(count, 0));
    }
    return all.toByteArray();
  }

  @Test
  void everyByteComesUnchangedAndInOrder() throws Exception {
    try (FarEnd far = farEnd();
        LinkConnection connection = far.link().open()) {
      far.send(allBytes());
      assertThat(read(connection, allBytes().length, 4_096)).isEqualTo(allBytes());
    }
  }

  @Test
  void aSmallBufferLosesNothing() throws Exception {
    try (FarEnd far = farEnd();
        LinkConnection connection = far.link().open()) {
      far.send(allBytes());
      assertThat(read(connection, allBytes().length, 7)).isEqualTo(allBytes());
    }
  }

  @Test
  void afterTheEndItIsLostForEver() throws Exception {
    try (FarEnd far = farEnd();
        LinkConnection connection = far.link().open()) {
      far.send("S,0".getBytes(StandardCharsets.US_ASCII));
      read(connection, 3, 16);
      far.end();
      assertThat(read(connection, 1, 16)).isEmpty();
      assertThat(connection.read(new byte[16])).isEqualTo(LinkConnection.LOST);
    }
  }

  @Test
  void closingTwiceIsHarmlessAndReadingAfterwardsIsLost() throws Exception {
    try (FarEnd far = farEnd()) {
      LinkConnection connection = far.link().open();
      connection.close();
      connection.close();
      assertThat(connection.read(new byte[16])).isEqualTo(LinkConnection.LOST);
    }
  }

  @Test
  void itsNameIsItsAddress() throws Exception {
    try (FarEnd far = farEnd()) {
      assertThat(far.link().name()).isNotBlank();
    }
  }
}
