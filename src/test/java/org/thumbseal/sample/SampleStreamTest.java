package org.thumbseal.sample;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;
import org.thumbseal.sample.StreamEvent.Gap;
import org.thumbseal.sample.StreamEvent.KeyPressed;
import org.thumbseal.sample.StreamEvent.Restart;
import org.thumbseal.sample.StreamEvent.Sample;
import org.thumbseal.sample.StreamEvent.SensorFault;
import org.thumbseal.wire.Crc16;
import org.thumbseal.wire.RejectCause;

/** From lines to samples on one device clock; the sensor here sends every 10 ms. */
class SampleStreamTest {
  private static final long UINT32 = 1L << 32;
  private static final long PERIOD = 10_000;

  private final List<StreamEvent> events = new ArrayList<>();
  private final SampleStream stream = new SampleStream(events::add);
  private long hostMicros;

  private void line(String text) {
    stream.accept(hostMicros, text);
  }

  private void body(String body) {
    line(Crc16.seal(body));
  }

  private void reading(long counter, long micros) {
    body("S," + Math.floorMod(counter, UINT32) + ',' + Math.floorMod(micros, UINT32) + ",-35");
    hostMicros += PERIOD;
  }

  /** Readings from one number to before another, their clock at zero for number 0. */
  private void readings(long from, long to) {
    for (long n = from; n < to; n++) {
      reading(n, n * PERIOD);
    }
  }

  private List<Sample> samples() {
    return all(Sample.class);
  }

  private <E extends StreamEvent> List<E> all(Class<E> kind) {
    return events.stream().filter(kind::isInstance).map(kind::cast).toList();
  }

  private List<Double> seconds() {
    return samples().stream().map(Sample::seconds).toList();
  }

  @Test
  void timeBeginsWithTheFirstSampleAndIsTheSensorsOwn() {
    hostMicros = 500_000;
    reading(7, 123_456);
    hostMicros += 90_000; // arrives late, in a batch
    reading(8, 133_460);

    assertThat(events).containsExactly(new Sample(0, 0.5, -35), new Sample(0.010004, 0.6, -35));
    assertThat(stream.rejected()).isEmpty();
  }

  @Test
  void counterAndClockMayWrap() {
    for (long n = 0; n < 10; n++) {
      reading(UINT32 - 3 + n, UINT32 - 25_000 + n * PERIOD);
    }

    assertThat(events).hasSize(10).allMatch(Sample.class::isInstance);
    assertThat(seconds().get(9)).isCloseTo(0.09, within(1e-9));
  }

  @Test
  void lostSamplesAreAGapOfKnownLength() {
    readings(0, 5);
    hostMicros += 3 * PERIOD;
    readings(8, 10);

    assertThat(all(Gap.class)).containsExactly(new Gap(0.04, 0.04, 3));
    assertThat(samples()).hasSize(7);
    assertThat(seconds().get(5)).isCloseTo(0.08, within(1e-9));
  }

  /** The clock of 32 bits in microseconds wraps after 4295 s; the host tells how often. */
  @Test
  void aGapLongerThanTheClockReachesIsMeasuredByTheHost() {
    readings(0, 3);
    hostMicros += 4_999_990_000L;
    readings(500_002, 500_004);

    assertThat(all(Restart.class)).isEmpty();
    assertThat(all(Gap.class)).hasSize(1);
    assertThat(all(Gap.class).get(0).length()).isCloseTo(5_000, within(1e-6));
    assertThat(all(Gap.class).get(0).lost()).isEqualTo(499_999);
  }

  @Test
  void aSensorThatBeginsAnewGoesOnByTheHostsClock() {
    readings(1_000, 1_005);
    hostMicros += 2_000_000;
    readings(0, 3);

    assertThat(all(Restart.class)).containsExactly(new Restart(0.04));
    assertThat(samples()).hasSize(8);
    assertThat(seconds().get(5)).isCloseTo(0.04 + 2.01, within(1e-9));
    assertThat(seconds().get(6)).isCloseTo(0.04 + 2.02, within(1e-9));
    assertThat(stream.rejected()).isEmpty();
  }

  /** One in 65 536 corrupted lines passes the checksum; its counter gives it away. */
  @Test
  void aReadingThatFollowsFromNothingIsLeftOut() {
    readings(0, 5);
    reading(3_000_000_000L, 5 * PERIOD);
    readings(6, 10);
    reading(10, 3_000_000_000L);
    readings(11, 13);
    stream.end();

    assertThat(stream.rejected()).containsExactly(Map.entry(RejectCause.IMPLAUSIBLE, 2));
    assertThat(all(Restart.class)).isEmpty();
    assertThat(samples()).hasSize(11);
    assertThat(all(Gap.class)).extracting(Gap::lost).containsExactly(1L, 1L);
  }

  @Test
  void aLineSentTwiceCountsOnce() {
    readings(0, 5);
    reading(4, 4 * PERIOD);
    hostMicros -= PERIOD;
    readings(5, 8);

    assertThat(samples()).hasSize(8);
    assertThat(all(Gap.class)).isEmpty();
    assertThat(stream.rejected()).containsExactly(Map.entry(RejectCause.IMPLAUSIBLE, 1));
  }

  @Test
  void whatWaitsAtTheEndIsNoSample() {
    readings(0, 5);
    reading(77_777, 5 * PERIOD);
    assertThat(stream.rejected()).isEmpty();
    stream.end();

    assertThat(samples()).hasSize(5);
    assertThat(stream.rejected()).containsExactly(Map.entry(RejectCause.IMPLAUSIBLE, 1));
  }

  /** It says 100 Hz and sends ten a second: after some readings its own pace is believed. */
  @Test
  void aSensorSlowerThanItSaysIsHeardAllTheSame() {
    body("I,1,X-1,1.0,G,-100000,0,100");
    for (long n = 0; n < 30; n++) {
      reading(n, n * 100_000);
      hostMicros += 90_000;
    }

    List<Sample> samples = samples();
    assertThat(samples.size()).isGreaterThanOrEqualTo(25);
    for (int i = samples.size() - 20; i < samples.size(); i++) {
      assertThat(samples.get(i).seconds() - samples.get(i - 1).seconds())
          .isCloseTo(0.1, within(1e-9));
    }
    assertThat(all(Restart.class)).isEmpty();
  }

  @Test
  void theFirstLineMayBeHalfALine() {
    line("00345,-35*57AD");
    assertThat(stream.rejected()).isEmpty();

    line("00345,-35*57AD");
    assertThat(stream.rejected()).containsExactly(Map.entry(RejectCause.WRONG_CHECKSUM, 1));
  }

  @Test
  void whatIsLeftOutIsCountedByItsCause() {
    readings(0, 1);
    line("x".repeat(97));
    line("S,1,10000,-35");
    line("S,1,10000,-35*0000");
    body("S,1,10000,minus");
    body("S,1,10000");
    body("Z,of,a,later,version");

    assertThat(stream.rejected())
        .isEqualTo(
            Map.of(
                RejectCause.TOO_LONG, 1,
                RejectCause.NO_CHECKSUM, 1,
                RejectCause.WRONG_CHECKSUM, 1,
                RejectCause.MALFORMED, 2));
  }

  @Test
  void faultsAndKeysStandBetweenTheSamplesTheyCameBetween() {
    readings(0, 3);
    body("F,25000,ADC");
    body("K,25000,1");
    body("K,25500,0");
    readings(3, 4);

    assertThat(events.subList(3, 5))
        .containsExactly(new SensorFault(0.02, "ADC"), new KeyPressed(0.02, 0.03));
    assertThat(events.get(5)).isInstanceOf(Sample.class);
  }

  @Test
  void whatTheSensorSaidLastIsKnown() {
    assertThat(stream.identity()).isEmpty();
    body("I,1,A-1,1.0,G,-100000,0,100");
    body("I,1,B-2,1.0,A,0,120000,50");
    body("A,0,98765,2310");
    body("A,0,,2311");

    assertThat(stream.identity().orElseThrow().sensorId()).isEqualTo("B-2");
    assertThat(stream.ambient().orElseThrow().pascals()).hasValue(98_765);
  }
}
