package org.thumbseal.sample;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;
import org.thumbseal.sample.StreamEvent.Gap;
import org.thumbseal.sample.StreamEvent.Restart;
import org.thumbseal.sample.StreamEvent.Sample;
import org.thumbseal.wire.PlainLines;
import org.thumbseal.wire.RejectCause;

/** Readings without checksum: what is a time, what is a gap, and what no pump can have done. */
class PlainSequenceTest {
  private static final String TIMED = "lines:column=2,time=1:ms,unit=Pa,sign=gauge";
  private static final String UNTIMED = "lines:column=1,unit=Pa,sign=gauge";

  private final List<StreamEvent> events = new ArrayList<>();

  private SampleStream stream(String format) throws Exception {
    SampleStream stream = new SampleStream(PlainLines.parse(format), events::add);
    stream.accept(0, "half a line");
    return stream;
  }

  private void timed(long[] millis, int... pascals) throws Exception {
    SampleStream stream = stream(TIMED);
    for (int i = 0; i < millis.length; i++) {
      stream.accept(10_000L * (i + 1), millis[i] + "," + pascals[i % pascals.length]);
    }
    stream.end();
    rejected = stream.rejected();
  }

  private Map<RejectCause, Integer> rejected = Map.of();

  private List<Integer> levels(int... pascals) throws Exception {
    SampleStream stream = stream(TIMED);
    for (int i = 0; i < pascals.length; i++) {
      stream.accept(10_000L * (i + 1), 10 * i + "," + pascals[i]);
    }
    stream.end();
    rejected = stream.rejected();
    return samples().stream().map(s -> (int) s.pascals()).toList();
  }

  private List<Sample> samples() {
    return events.stream().filter(Sample.class::isInstance).map(Sample.class::cast).toList();
  }

  private List<Double> seconds() {
    return samples().stream().map(Sample::seconds).toList();
  }

  @Test
  void oneDigitLessIsNoReading() throws Exception {
    assertThat(levels(-85_000, -85_010, -8_500, -85_000, -85_020))
        .containsExactly(-85_000, -85_010, -85_000, -85_020);
    assertThat(rejected).isEqualTo(Map.of(RejectCause.IMPLAUSIBLE, 1));
  }

  @Test
  void aLineEndInMidNumberMakesTwoWrongLinesAndNoReading() throws Exception {
    assertThat(levels(-85_000, -85_010, -85, 0, -85_000, -85_020))
        .containsExactly(-85_000, -85_010, -85_000, -85_020);
    assertThat(rejected).isEqualTo(Map.of(RejectCause.IMPLAUSIBLE, 2));
  }

  @Test
  void aReleaseFasterThanTheSamplesIsTakenWhole() throws Exception {
    int[] release = {-85_000, -85_000, -60_000, -20_000, -3_000, 0, 0, 0, 0};
    assertThat(levels(release))
        .containsExactly(-85_000, -85_000, -60_000, -20_000, -3_000, 0, 0, 0, 0);
    assertThat(rejected).isEmpty();
    assertThat(seconds()).startsWith(0.0, 0.01, 0.02, 0.03).isSorted();
  }

  @Test
  void theFirstReadingIsNotBelievedAlone() throws Exception {
    assertThat(levels(-90_000, 0, 10, 0)).containsExactly(0, 10, 0);
  }

  @Test
  void aWrongDigitInTheTimeIsLeftOut() throws Exception {
    timed(new long[] {100, 110, 120, 190, 140, 150, 60, 170, 180}, -5);
    assertThat(seconds()).containsExactly(0.0, 0.01, 0.02, 0.04, 0.05, 0.07, 0.08);
    assertThat(rejected).isEqualTo(Map.of(RejectCause.IMPLAUSIBLE, 2));
  }

  @Test
  void aTimeThatWrapsGoesOn() throws Exception {
    timed(new long[] {4_294_967_276L, 4_294_967_286L, 0, 10, 20}, -5);
    assertThat(seconds()).containsExactly(0.0, 0.01, 0.02, 0.03, 0.04);
  }

  @Test
  void aTimeThatBeginsAgainIsARestart() throws Exception {
    timed(new long[] {5_000, 5_010, 5_020, 0, 10, 20}, -5);
    assertThat(events).hasAtLeastOneElementOfType(Restart.class);
    assertThat(seconds()).isSorted().hasSize(6);
  }

  @Test
  void missingLinesAreAGap() throws Exception {
    SampleStream stream = stream(TIMED);
    for (int i = 0; i < 100; i++) {
      long millis = i < 50 ? 10 * i : 400 + 10 * i;
      stream.accept(1_000 * millis, millis + ",-5");
    }
    stream.end();
    assertThat(events).filteredOn(Gap.class::isInstance).hasSize(1);
    assertThat(events).contains(new Gap(0.49, 0.9 - 0.49, 0));
    assertThat(samples()).hasSize(100);
  }

  @Test
  void whatArrivesTogetherIsSpreadAndASilenceIsNotFilled() throws Exception {
    SampleStream stream = stream(UNTIMED);
    for (int batch = 1; batch <= 60; batch++) {
      long late = batch > 30 ? 2_000_000 : 0;
      for (int i = 0; i < 4; i++) {
        stream.accept(batch * 40_000L + late, "-" + (batch * 4 + i));
      }
    }
    stream.end();
    List<Double> times = seconds();
    // The four of the first batch are one: how old the others are nobody knows.
    assertThat(times).hasSize(1 + 59 * 4).isSorted().doesNotHaveDuplicates();
    assertThat(times.get(9) - times.get(8)).isCloseTo(0.01, within(1e-9));
    assertThat(events).filteredOn(Gap.class::isInstance).hasSize(1);
    assertThat(samples()).isSortedAccordingTo((a, b) -> Double.compare(b.pascals(), a.pascals()));
  }
}
