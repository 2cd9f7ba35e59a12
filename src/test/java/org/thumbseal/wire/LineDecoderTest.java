package org.thumbseal.wire;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.OptionalInt;
import java.util.random.RandomGenerator;
import java.util.random.RandomGeneratorFactory;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.thumbseal.wire.Decoded.Good;
import org.thumbseal.wire.Decoded.Rejected;
import org.thumbseal.wire.WireRecord.Ambient;
import org.thumbseal.wire.WireRecord.Fault;
import org.thumbseal.wire.WireRecord.Identity;
import org.thumbseal.wire.WireRecord.Reading;
import org.thumbseal.wire.WireRecord.Reference;
import org.thumbseal.wire.WireRecord.StartKey;
import org.thumbseal.wire.WireRecord.Unknown;

class LineDecoderTest {

  /** Whole lines with their checksums as sensors of other make sent them. */
  @Test
  void readsLinesOfRecordedCaptures() {
    assertThat(LineDecoder.decode("I,1,VS-01,1.0.0,G,-115000,15000,100*5C89"))
        .isEqualTo(
            new Good(new Identity("VS-01", "1.0.0", Reference.GAUGE, -115_000, 15_000, 100)));
    assertThat(LineDecoder.decode("I,1,VS-01,1.0.0,G,-115000,15000,50*5F1D"))
        .isEqualTo(new Good(new Identity("VS-01", "1.0.0", Reference.GAUGE, -115_000, 15_000, 50)));
    assertThat(LineDecoder.decode("A,4285967296,70109,2310*C857"))
        .isEqualTo(
            new Good(new Ambient(4_285_967_296L, OptionalInt.of(70_109), OptionalInt.of(2_310))));
    assertThat(LineDecoder.decode("S,0,4285967354,0*0572"))
        .isEqualTo(new Good(new Reading(0, 4_285_967_354L, 0)));
    assertThat(LineDecoder.decode("S,3,4286027173,-168*8958"))
        .isEqualTo(new Good(new Reading(3, 4_286_027_173L, -168)));
    assertThat(LineDecoder.decode("S,1,1210308,112*43F9"))
        .isEqualTo(new Good(new Reading(1, 1_210_308, 112)));
  }

  @Test
  void readsTheRarerRecords() {
    assertThat(decodeSealed("K,17,1")).isEqualTo(new Good(new StartKey(17, true)));
    assertThat(decodeSealed("K,17,0")).isEqualTo(new Good(new StartKey(17, false)));
    assertThat(decodeSealed("F,17,ADC")).isEqualTo(new Good(new Fault(17, "ADC")));
    assertThat(decodeSealed("A,17,,"))
        .isEqualTo(new Good(new Ambient(17, OptionalInt.empty(), OptionalInt.empty())));
    assertThat(decodeSealed("I,1,P7,2,A,0,110000,12.5"))
        .isEqualTo(new Good(new Identity("P7", "2", Reference.ABSOLUTE, 0, 110_000, 12.5)));
  }

  @Test
  void takesCounterAndClockUpToTheirLastValue() {
    assertThat(decodeSealed("S,4294967295,4294967295,-999999999"))
        .isEqualTo(new Good(new Reading(4_294_967_295L, 4_294_967_295L, -999_999_999)));
    assertThat(decodeSealed("S,4294967296,0,0")).isEqualTo(new Rejected(RejectCause.MALFORMED));
  }

  @ParameterizedTest
  @ValueSource(strings = {"Z", "T,1,2,3", "I,2,whatever", "SX,0,0,0", "s,0,0,0"})
  void skipsRecordsOfTheFuture(String body) {
    assertThat(decodeSealed(body)).isEqualTo(new Good(new Unknown()));
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "",
        ",",
        "S",
        "S,0,0",
        "S,0,0,0,0",
        "S,,0,0",
        "S,-1,0,0",
        "S,0,0,",
        "S,0,0,+5",
        "S,0,0,1.5",
        "S,0,0,1e3",
        "S,0,0, 5",
        "S,0,0,1234567890",
        "S,99999999999,0,0",
        "S,0x10,0,0",
        "S,0,0,--5",
        "A,0,1",
        "A,0,x,",
        "K,0,2",
        "K,0,",
        "F,0,",
        "F,0,a b",
        "I,1",
        "I,1,id,fw,X,-1,1,10",
        "I,1,id,fw,G,1,-1,10",
        "I,1,id,fw,G,1,1,10",
        "I,1,id,fw,G,-1,1,0",
        "I,1,id,fw,G,-1,1,-5",
        "I,1,id,fw,G,-1,1,1e9",
        "I,1,,fw,G,-1,1,10",
        "I,1,id,fw,G,-1,1,10,more",
        "S,0,0,5\u0000",
        "S,0,0,\u0665",
        "S\u00e9,0"
      })
  void rejectsFieldsThatDoNotFitThoughTheChecksumDoes(String body) {
    assertThat(decodeSealed(body)).isEqualTo(new Rejected(RejectCause.MALFORMED));
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "",
        "*",
        "S,0,0,0",
        "S,0,0,0*EAE",
        "S,0,0,0*eae5",
        "S,0,0,0*EAEG",
        "S,0,0,0+EAE5",
        "S,0,0,0*EAE5 ",
        "*EAE",
        "EAE5"
      })
  void rejectsLinesWithoutAChecksumAtTheEnd(String line) {
    assertThat(LineDecoder.decode(line)).isEqualTo(new Rejected(RejectCause.NO_CHECKSUM));
  }

  @Test
  void rejectsEveryLineWithOneChangedCharacterInTheBody() {
    String line = "S,3,4286027173,-168*8958";
    for (int i = 0; i < line.length() - 5; i++) {
      StringBuilder changed = new StringBuilder(line);
      changed.setCharAt(i, (char) (line.charAt(i) ^ 1));
      assertThat(LineDecoder.decode(changed.toString()))
          .as("changed at %d", i)
          .isEqualTo(new Rejected(RejectCause.WRONG_CHECKSUM));
    }
  }

  @Test
  void takes96BytesAndRefuses97() {
    String longest = Crc16.seal("Z," + "x".repeat(89));
    assertThat(longest).hasSize(96);
    assertThat(LineDecoder.decode(longest)).isEqualTo(new Good(new Unknown()));
    String longer = Crc16.seal("Z," + "x".repeat(90));
    assertThat(LineDecoder.decode(longer)).isEqualTo(new Rejected(RejectCause.TOO_LONG));
  }

  /** A CRC of 16 bits finds every burst of up to 16 bits: two neighbouring bytes, any change. */
  @Test
  void neverTakesALineWithTwoNeighbouringBytesChanged() {
    String line = "S,3,4286027173,-168*8958";
    for (int i = 0; i < line.length() - 6; i++) {
      for (int change = 1; change < 0x10000; change += 13) {
        StringBuilder changed = new StringBuilder(line);
        changed.setCharAt(i, (char) (line.charAt(i) ^ (change >> 8)));
        changed.setCharAt(i + 1, (char) (line.charAt(i + 1) ^ (change & 0xFF)));
        assertThat(LineDecoder.decode(changed.toString())).isInstanceOf(Rejected.class);
      }
    }
  }

  /**
   * Noise with the form of a checksum passes by chance of 1 in 65 536: 3 of 200 000 lines are
   * expected, and more than 12 in one draw of 100 000.
   */
  @Test
  void takesNoiseByNoMoreThanChanceAndNeverThrows() {
    long seed = 20_260_302;
    RandomGenerator random = RandomGeneratorFactory.of("L64X128MixRandom").create(seed);
    int taken = 0;
    for (int i = 0; i < 200_000; i++) {
      Decoded decoded = LineDecoder.decode(noise(random) + '*' + hex(random));
      taken += decoded.equals(new Rejected(RejectCause.WRONG_CHECKSUM)) ? 0 : 1;
    }
    assertThat(taken).as("seed %d", seed).isLessThanOrEqualTo(12);
  }

  private static String noise(RandomGenerator random) {
    StringBuilder line = new StringBuilder();
    for (int length = random.nextInt(90); length > 0; length--) {
      line.append((char) random.nextInt(256));
    }
    return line.toString();
  }

  private static String hex(RandomGenerator random) {
    return Crc16.hex(random.nextInt(0x10000));
  }

  private static Decoded decodeSealed(String body) {
    return LineDecoder.decode(Crc16.seal(body));
  }
}
