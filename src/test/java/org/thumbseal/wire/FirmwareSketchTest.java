package org.thumbseal.wire;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.thumbseal.sample.SampleStream;
import org.thumbseal.sample.StreamEvent;
import org.thumbseal.wire.Decoded.Good;
import org.thumbseal.wire.WireRecord.Fault;
import org.thumbseal.wire.WireRecord.Identity;
import org.thumbseal.wire.WireRecord.Reading;
import org.thumbseal.wire.WireRecord.StartKey;

/**
 * Compiles the example sensor of the firmware notes with gcc, runs it on its made-up board and
 * listens to it as the host does. The times and pressures expected are those that the comment above
 * the made-up board promises. Skipped where there is no gcc.
 */
class FirmwareSketchTest {
  private static final Path SOURCE = FencedBlock.NOTES.resolve("example/sensor.c");
  private static final long CLOCK_AT_START = 4_291_967_296L;

  /** One code of 12 bits, for 130 kPa on 80 % of the supply, Pa. */
  private static final double ADC_STEP = 130_000 / 0.8 / 4096;

  private static final boolean GCC = hasGcc();

  private static List<String> lines = List.of();
  private static List<Decoded> heard = List.of();

  @BeforeAll
  static void compileRunAndListen(@TempDir Path folder) throws Exception {
    if (!GCC) {
      return;
    }
    String program = folder.resolve("sensor").toString();
    run(
        Stream.of("gcc -std=c99 -Wall -Wextra -Wpedantic -Wconversion -Werror -DON_A_COMPUTER -o")
            .flatMap(line -> Stream.of(line.split(" ")))
            .toList(),
        folder.resolve("gcc.txt"),
        program,
        SOURCE.toString());
    Path output = folder.resolve("lines.txt");
    run(List.of(program), output);
    lines = listen(Files.readAllBytes(output));
    heard = lines.stream().map(LineDecoder::decode).toList();
  }

  @BeforeEach
  void skipWithoutGcc() {
    assumeTrue(GCC, "skipped: gcc is not installed, so the example sensor cannot be compiled");
  }

  @Test
  void everyLineIsGood() {
    assertThat(heard).hasSizeGreaterThan(700).allMatch(Good.class::isInstance);
  }

  @Test
  void theIdentityComesFirstAndThenEveryTwoSeconds() {
    assertThat(((Good) heard.get(0)).content())
        .isEqualTo(
            new Identity("tp-01", "1.0.0", WireRecord.Reference.GAUGE, -115_000, 15_000, 100));
    List<Long> samplesBefore =
        IntStream.range(1, heard.size())
            .filter(i -> ((Good) heard.get(i)).content() instanceof Identity)
            .mapToObj(FirmwareSketchTest::nextCounter)
            .toList();
    assertThat(samplesBefore).containsExactly(200L, 400L, 600L);
  }

  @Test
  void theClockRunsTrueThroughItsWrapAndThroughGaps() {
    List<Reading> readings = all(Reading.class);
    assertThat(readings.get(0).micros()).isEqualTo(CLOCK_AT_START + 4_500);
    assertThat(readings)
        .allMatch(r -> r.micros() == (CLOCK_AT_START + 4_500 + 10_000 * r.counter()) % (1L << 32));
    assertThat(readings).anyMatch(r -> r.micros() < CLOCK_AT_START);
  }

  @Test
  void aStallOfTheHostAndAFailedConversionAreGapsAndNothingElse() {
    List<Reading> readings = all(Reading.class);
    List<Long> lost = new ArrayList<>();
    for (int i = 1; i < readings.size(); i++) {
      lost.add(readings.get(i).counter() - readings.get(i - 1).counter() - 1);
    }
    // 30 samples fall into the stall of 0.3 s, and 16 of them wait in the sensor's own memory
    assertThat(lost.stream().filter(n -> n != 0)).containsExactly(14L, 1L);
  }

  @Test
  void theHostFollowsItThroughWrapAndGapsAndDoubtsNothing() {
    List<StreamEvent> events = new ArrayList<>();
    SampleStream stream = new SampleStream(events::add);
    long hostMicros = 0;
    for (String line : lines) {
      if (((Good) LineDecoder.decode(line)).content() instanceof Reading r) {
        hostMicros = Math.round(seconds(r.micros()) * 1e6);
      }
      stream.accept(hostMicros, line);
    }
    stream.end();
    assertThat(stream.rejected()).isEmpty();
    assertThat(events).noneMatch(StreamEvent.Restart.class::isInstance);
    assertThat(events).filteredOn(StreamEvent.Gap.class::isInstance).hasSize(2);
    assertThat(events).filteredOn(StreamEvent.Sample.class::isInstance).hasSize(800 - 14 - 1);
  }

  @Test
  void thePressureIsRightToOneStepOfTheAdc() {
    List<Reading> rising = all(Reading.class).stream().filter(r -> between(2.1, r, 5.9)).toList();
    assertThat(rising).hasSize(380 - 14 - 1);
    rising.forEach(
        r ->
            assertThat((double) r.pascals())
                .as("at %.4f s", seconds(r.micros()))
                .isCloseTo(-25_000 * (seconds(r.micros()) - 2), within(ADC_STEP)));
  }

  @Test
  void theRestIsZeroBeforeAndAfter() {
    assertThat(all(Reading.class))
        .filteredOn(r -> between(0, r, 2) || between(7.5, r, 8))
        .hasSize(200 + 50)
        .allMatch(r -> Math.abs(r.pascals()) <= ADC_STEP);
  }

  @Test
  void aBrokenWireIsToldEachSecondAndItsReadingsAreNotMadeUp() {
    assertThat(all(Fault.class).stream().map(f -> f.code()))
        .containsExactly("ADC", "RANGE", "RANGE");
    assertThat(all(Fault.class).stream().map(f -> seconds(f.micros())))
        .containsExactly(5.0045, 6.0045, 7.0045);
    assertThat(all(Reading.class))
        .filteredOn(r -> between(6, r, 7.5))
        .hasSize(150)
        .allMatch(r -> r.pascals() == -115_000 - 130_000 / 8);
  }

  @Test
  void aBounceOfTheKeyIsNotAPress() {
    assertThat(all(StartKey.class))
        .containsExactly(
            new StartKey(CLOCK_AT_START + 1_000_000, true),
            new StartKey(CLOCK_AT_START + 1_200_000, false));
  }

  private static boolean hasGcc() {
    try {
      return new ProcessBuilder("gcc", "--version")
              .redirectOutput(ProcessBuilder.Redirect.DISCARD)
              .redirectErrorStream(true)
              .start()
              .waitFor()
          == 0;
    } catch (IOException e) {
      return false;
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
      return false;
    }
  }

  private static void run(List<String> start, Path output, String... more) throws Exception {
    List<String> command = new ArrayList<>(start);
    command.addAll(List.of(more));
    Process process =
        new ProcessBuilder(command)
            .redirectErrorStream(true)
            .redirectOutput(output.toFile())
            .start();
    assertThat(process.waitFor()).as(() -> FencedBlock.read(output)).isZero();
  }

  private static List<String> listen(byte[] bytes) {
    List<String> whole = new ArrayList<>();
    new LineAssembler(whole::add).accept(bytes, 0, bytes.length);
    return whole;
  }

  private static <T extends WireRecord> List<T> all(Class<T> kind) {
    return heard.stream()
        .map(decoded -> ((Good) decoded).content())
        .filter(kind::isInstance)
        .map(kind::cast)
        .toList();
  }

  private static long nextCounter(int from) {
    return heard.stream()
        .skip(from)
        .map(decoded -> ((Good) decoded).content())
        .filter(Reading.class::isInstance)
        .map(content -> ((Reading) content).counter())
        .findFirst()
        .orElseThrow();
  }

  private static boolean between(double begin, Reading r, double end) {
    return seconds(r.micros()) >= begin && seconds(r.micros()) < end;
  }

  private static double seconds(long micros) {
    return ((micros - CLOCK_AT_START) & 0xFFFF_FFFFL) / 1e6;
  }
}
