package org.thumbseal.json;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.nio.charset.StandardCharsets;
import java.security.MessageDigest;
import java.util.HexFormat;
import java.util.PrimitiveIterator;
import java.util.function.LongSupplier;
import java.util.stream.LongStream;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** Numbers of canonical documents against what is published with RFC 8785. */
class NumberVectorsTest {
  /** RFC 8785 appendix B, table 2. */
  @ParameterizedTest
  @CsvSource({
    "0000000000000000, 0",
    "8000000000000000, 0",
    "0000000000000001, 5e-324",
    "8000000000000001, -5e-324",
    "7fefffffffffffff, 1.7976931348623157e+308",
    "ffefffffffffffff, -1.7976931348623157e+308",
    "4340000000000000, 9007199254740992",
    "c340000000000000, -9007199254740992",
    "4430000000000000, 295147905179352830000",
    "44b52d02c7e14af5, 9.999999999999997e+22",
    "44b52d02c7e14af6, 1e+23",
    "44b52d02c7e14af7, 1.0000000000000001e+23",
    "444b1ae4d6e2ef4e, 999999999999999700000",
    "444b1ae4d6e2ef4f, 999999999999999900000",
    "444b1ae4d6e2ef50, 1e+21",
    "3eb0c6f7a0b5ed8c, 9.999999999999997e-7",
    "3eb0c6f7a0b5ed8d, 0.000001",
    "41b3de4355555553, 333333333.3333332",
    "41b3de4355555554, 333333333.33333325",
    "41b3de4355555555, 333333333.3333333",
    "41b3de4355555556, 333333333.3333334",
    "41b3de4355555557, 333333333.33333343",
    "becbf647612f3696, -0.0000033333333333333333",
    "43143ff3c1cb0959, 1424953923781206.2",
  })
  void samples(String bits, String text) {
    double value = Double.longBitsToDouble(Long.parseUnsignedLong(bits, 16));

    assertThat(Canonical.text(Json.object().put("n", value))).isEqualTo("{\"n\":" + text + "}");
  }

  /** RFC 8785 appendix B: NaN and Infinity must be an error. */
  @ParameterizedTest
  @ValueSource(strings = {"7fffffffffffffff", "7ff0000000000000", "fff0000000000000"})
  void whatIsNoNumberIsAnError(String bits) {
    double value = Double.longBitsToDouble(Long.parseUnsignedLong(bits, 16));

    assertThatThrownBy(() -> Canonical.bytes(Json.object().put("n", value)))
        .isInstanceOf(IllegalArgumentException.class);
  }

  /**
   * The torture sequence that RFC 8785 appendix B points to. Digests and the way in which the
   * sequence is made: README of the test data of cyberphone/json-canonicalization, section "ES6
   * Numbers"; 0x1p-1022 and the 1999 numbers after it, then the SHA-256 chain from 32 zero bytes
   * read as little-endian doubles, come after a fixed list (es6-static-numbers.csv).
   */
  @ParameterizedTest
  @CsvSource({
    "1000, 37967, be18b62b6f69cdab33a7e0dae0d9cfa869fda80ddc712221570f9f40a5878687",
    "10000, 399022, b9f7a8e75ef22a835685a52ccba7f7d6bdc99e34b010992cbc5864cd12be6892",
    "100000, 4031728, 22776e6d4b49fa294a0d0f349268e5c28808fe7e0cb2bcbe28f63894e494d4c7"
  })
  void tortureSequence(int lines, int bytes, String digest) throws Exception {
    MessageDigest sha256 = MessageDigest.getInstance("SHA-256");
    int written = 0;
    PrimitiveIterator.OfLong sequence = sequence().iterator();
    for (int i = 0; i < lines; i++) {
      byte[] line = line(sequence.nextLong());
      sha256.update(line);
      written += line.length;
    }

    assertThat(written).isEqualTo(bytes);
    assertThat(HexFormat.of().formatHex(sha256.digest())).isEqualTo(digest);
  }

  private static byte[] line(long bits) {
    String number = Canonical.number(Double.longBitsToDouble(bits));
    return (Long.toHexString(bits) + "," + number + "\n").getBytes(StandardCharsets.US_ASCII);
  }

  private static LongStream sequence() throws Exception {
    byte[] listed =
        NumberVectorsTest.class.getResourceAsStream("es6-static-numbers.csv").readAllBytes();
    LongStream fixed =
        new String(listed, StandardCharsets.US_ASCII)
            .lines()
            .mapToLong(line -> Long.parseUnsignedLong(line, 16));
    LongStream smallest = LongStream.range(0, 2000).map(i -> 0x0010000000000000L + i);
    LongStream hashed = LongStream.generate(new HashedNumbers()).filter(HashedNumbers::isUsed);
    return LongStream.concat(LongStream.concat(fixed, smallest), hashed);
  }

  /** Four doubles of each SHA-256 digest, of which the next digest is made. */
  private static final class HashedNumbers implements LongSupplier {
    private final ByteBuffer block = ByteBuffer.allocate(32).order(ByteOrder.LITTLE_ENDIAN);

    HashedNumbers() {
      block.position(block.limit());
    }

    static boolean isUsed(long bits) {
      double value = Double.longBitsToDouble(bits);
      return value != 0 && Double.isFinite(value);
    }

    @Override
    public long getAsLong() {
      if (!block.hasRemaining()) {
        block.clear();
        block.put(digest(block.array().clone())).flip();
      }
      return block.getLong();
    }

    private static byte[] digest(byte[] bytes) {
      try {
        return MessageDigest.getInstance("SHA-256").digest(bytes);
      } catch (java.security.NoSuchAlgorithmException e) {
        throw new IllegalStateException(e);
      }
    }
  }

  /** Half to even on the exact binary value; no outside source, worked by hand. */
  @ParameterizedTest
  @CsvSource({
    "7.4200000001, 2, 7.42",
    "100.004, 2, 100",
    "1200, 1, 1200",
    "-0.0001, 2, 0",
    "2.5, 0, 2",
    "3.5, 0, 4",
    "1.005, 2, 1",
    "1e-9, 3, 0"
  })
  void roundsToPlaces(double value, int places, String text) {
    assertThat(Decimals.round(value, places).toPlainString()).isEqualTo(text);
  }

  @ParameterizedTest
  @ValueSource(doubles = {Double.NaN, Double.POSITIVE_INFINITY, Double.NEGATIVE_INFINITY})
  void roundsNoNonNumbers(double value) {
    assertThatThrownBy(() -> Decimals.round(value, 2)).isInstanceOf(NumberFormatException.class);
  }
}
