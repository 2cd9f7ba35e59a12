package org.thumbseal.daemon;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.charset.StandardCharsets;
import java.util.Arrays;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.thumbseal.wire.Crc16;
import org.thumbseal.wire.Decoded;
import org.thumbseal.wire.LineAssembler;
import org.thumbseal.wire.LineDecoder;
import org.thumbseal.wire.WireRecord.Reading;

/**
 * What goes wrong with a stream of 100 readings a second, read every 20 ms for 30 s, is told apart.
 */
class SharedPortTest {
  private static final int READ_MILLIS = 20;
  private static final long SEED = 5;

  private final Random random = new Random(SEED);
  private final SharedPort port = new SharedPort();
  private final LineAssembler assembler = new LineAssembler(this::line);
  private boolean suspected;
  private int timesHoles;

  private void line(String text) {
    if (LineDecoder.decode(text) instanceof Decoded.Good good
        && good.content() instanceof Reading reading) {
      SharedPort.Sign sign = port.at(reading.counter());
      suspected |= sign == SharedPort.Sign.SHARED;
      timesHoles += sign == SharedPort.Sign.HOLES ? 1 : 0;
    } else {
      port.broken();
    }
  }

  /** What becomes of the bytes of one read. */
  private interface Way {
    byte[] through(byte[] bytes);
  }

  /** What a sensor sends at each of its instants; empty where it leaves one out. */
  private interface Sensor {
    String at(int n);
  }

  private static String sample(int n) {
    return Crc16.seal("S," + n + "," + n * 10_000L + ",-" + 20_000) + "\n";
  }

  private boolean isSuspectedAfter(int readMillis, Sensor sensor, Way way) {
    StringBuilder waiting = new StringBuilder();
    for (int n = 0; n < 3_000; n++) {
      waiting.append(sensor.at(n));
      if (n * 10 % readMillis == 0) {
        byte[] bytes = way.through(waiting.toString().getBytes(StandardCharsets.ISO_8859_1));
        waiting.setLength(0);
        port.read(n * 10_000L);
        assembler.accept(bytes, 0, bytes.length);
      }
    }
    return suspected;
  }

  private byte[] halfTaken(byte[] bytes) {
    return random.nextBoolean() ? new byte[0] : bytes;
  }

  /** The kernel hands what it has to whoever asks first, at any byte. */
  private byte[] tornApart(byte[] bytes) {
    int from = bytes.length == 0 ? 0 : random.nextInt(bytes.length);
    return Arrays.copyOfRange(bytes, from, bytes.length);
  }

  private byte[] noisy(byte[] bytes) {
    for (int i = 0; i < bytes.length; i++) {
      bytes[i] ^= random.nextInt(200) == 0 ? (byte) (1 << random.nextInt(7)) : 0;
    }
    return bytes;
  }

  @Test
  void aQuietLineIsNotSuspected() {
    assertThat(isSuspectedAfter(READ_MILLIS, SharedPortTest::sample, b -> b)).isFalse();
  }

  @Test
  void anotherReaderThatTakesWholeReadsIsSuspected() {
    assertThat(isSuspectedAfter(READ_MILLIS, SharedPortTest::sample, this::halfTaken)).isTrue();
  }

  @Test
  void anotherReaderThatTakesPiecesIsSuspected() {
    assertThat(isSuspectedAfter(50, SharedPortTest::sample, this::tornApart)).isTrue();
  }

  /** One bit in 1600 wrong breaks every ninth line. */
  @Test
  void aNoisyLineIsNotSuspected() {
    assertThat(isSuspectedAfter(READ_MILLIS, SharedPortTest::sample, this::noisy)).isFalse();
  }

  @Test
  void aSensorThatLeavesReadingsOutIsNotSuspected() {
    Sensor lame = n -> n % 5 == 0 || n % 7 == 0 ? "" : sample(n);
    assertThat(isSuspectedAfter(READ_MILLIS, lame, b -> b)).isFalse();
  }

  /** Then somebody looks who else has the port open: once in ten seconds, not for every hole. */
  @Test
  void everyOtherLineGoneIsWorthALookAtMostOnceInTenSeconds() {
    Sensor halved = n -> n % 2 == 0 ? "" : sample(n);
    assertThat(isSuspectedAfter(READ_MILLIS, halved, b -> b)).isFalse();
    assertThat(timesHoles).isEqualTo(3);
  }

  @Test
  void noHolesAreSeenInANoisyLine() {
    isSuspectedAfter(READ_MILLIS, SharedPortTest::sample, this::noisy);
    assertThat(timesHoles).isZero();
  }

  @Test
  void aComputerThatComesTooLateIsNotSuspected() {
    Way overrun = b -> Arrays.copyOf(b, Math.min(b.length, 200 + random.nextInt(1_000)));
    assertThat(isSuspectedAfter(1_000, SharedPortTest::sample, overrun)).isFalse();
  }

  @Test
  void aSensorThatStartsAnewIsNotSuspected() {
    Sensor restarting = n -> sample(n % 50);
    assertThat(isSuspectedAfter(READ_MILLIS, restarting, b -> b)).isFalse();
  }
}
