package org.thumbseal.wire;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HexFormat;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.thumbseal.sample.SampleStream;
import org.thumbseal.sample.StreamEvent;
import org.thumbseal.wire.Decoded.Good;
import org.thumbseal.wire.WireRecord.Ambient;
import org.thumbseal.wire.WireRecord.Fault;
import org.thumbseal.wire.WireRecord.Identity;
import org.thumbseal.wire.WireRecord.Reading;
import org.thumbseal.wire.WireRecord.StartKey;

/**
 * The portable core of the reference firmware on this computer: its own tests, its encoder against
 * the lines of the notes and against the decoder here, and the made-up sensor for Linux.
 */
class FirmwareCoreTest {
  private static final int RANDOM_RECORDS = 1_000_000;

  /** One step of 10 bits, for 130 kPa on 80 % of the supply, Pa. */
  private static final double ADC_STEP = 130_000 / 0.8 / 1024;

  @TempDir private Path folder;
  private FirmwareBuild build;

  @BeforeEach
  void compilers() {
    build = FirmwareBuild.onThisComputer(folder);
  }

  /** With the sanitizers of addresses and of undefined behaviour. */
  @Test
  void itsOwnTestsAreGood() throws Exception {
    build.make("check");
  }

  @Test
  void itsLinesAreThoseOfTheNotes() throws Exception {
    List<FirmwareNotesTest.Example> examples =
        FirmwareNotesTest.examples()
            .filter(example -> LineDecoder.decode(example.line()) instanceof Good)
            .filter(example -> !example.outcome().equals("unknown"))
            // The rate of this core is whole.
            .filter(example -> !example.line().contains("62.5"))
            .toList();
    Path records = folder.resolve("records.txt");
    Files.write(records, examples.stream().map(e -> asFields(e.line())).toList());
    assertThat(examples).hasSizeGreaterThan(10);
    assertThat(encode(records))
        .containsExactlyElementsOf(examples.stream().map(e -> e.line()).toList());
  }

  private List<String> encode(Path records) throws Exception {
    Path encode = build.make("encode");
    return FirmwareBuild.runs(List.of("sh", "-c", encode + " < " + records)).lines().toList();
  }

  @Test
  void theFirstLineHasTheBytesOfTheNotes() throws Exception {
    Path record = Files.writeString(folder.resolve("record.txt"), "sample 0 1200345 -35\n");
    String line = encode(record).get(0) + "\n";
    String bytes = FencedBlock.ofNotes("bytes").get(0).lines().get(1);
    assertThat(
            HexFormat.ofDelimiter(" ")
                .withUpperCase()
                .formatHex(line.getBytes(StandardCharsets.ISO_8859_1)))
        .isEqualTo(bytes);
  }

  @Test
  void theDecoderGetsEveryRandomRecordBack() throws Exception {
    Path encode = build.make("encode");
    Path made = folder.resolve("made.txt");
    FirmwareBuild.runs(
        List.of("sh", "-c", encode + " random 20260302 " + RANDOM_RECORDS + " > " + made));
    int[] seen = {0};
    try (var lines = Files.lines(made, StandardCharsets.ISO_8859_1)) {
      lines.forEach(
          line -> {
            String[] sides = line.split(" => ", 2);
            if (!asFields(sides[1]).equals(sides[0])) {
              throw new AssertionError(line + " was taken for " + asFields(sides[1]));
            }
            seen[0]++;
          });
    }
    assertThat(seen[0]).isEqualTo(RANDOM_RECORDS);
  }

  /** What the decoder makes of a line, as the encoder says it. */
  private static String asFields(String line) {
    return LineDecoder.decode(line) instanceof Good good ? asFields(good.content()) : "refused";
  }

  private static String asFields(WireRecord content) {
    if (content instanceof Reading r) {
      return "sample " + r.counter() + " " + r.micros() + " " + r.pascals();
    } else if (content instanceof StartKey k) {
      return "key " + k.micros() + (k.pressed() ? " 1" : " 0");
    } else if (content instanceof Fault f) {
      return "fault " + f.micros() + " " + f.code();
    } else if (content instanceof Ambient a) {
      return "ambient " + a.micros() + " " + maybe(a.pascals()) + " " + maybe(a.centiCelsius());
    } else if (content instanceof Identity i) {
      return asFields(i);
    }
    return "unknown";
  }

  private static String asFields(Identity i) {
    String sense = i.reference() == WireRecord.Reference.GAUGE ? "G" : "A";
    String range = i.lowPascals() + " " + i.highPascals() + " " + Math.round(i.hertz());
    return "identity " + i.sensorId() + " " + i.firmware() + " " + sense + " " + range;
  }

  private static String maybe(OptionalInt number) {
    return number.isPresent() ? Integer.toString(number.getAsInt()) : "-";
  }

  @Test
  void theMadeUpSensorIsHeardWithoutDoubt() throws Exception {
    List<String> lines = madeUp();
    assertThat(lines.stream().map(LineDecoder::decode)).allMatch(Good.class::isInstance);
    List<StreamEvent> events = new ArrayList<>();
    SampleStream stream = new SampleStream(events::add);
    long hostMicros = 0;
    for (String line : lines) {
      hostMicros = reading(line).map(Reading::micros).orElse(hostMicros);
      stream.accept(hostMicros, line);
    }
    stream.end();
    assertThat(stream.rejected()).isEmpty();
    assertThat(events).noneMatch(StreamEvent.Gap.class::isInstance);
    assertThat(events).filteredOn(StreamEvent.Sample.class::isInstance).hasSize(4998);
  }

  /** The curve is the one that {@code boards/linux/main.c} states. */
  @Test
  void theMadeUpSensorReadsWhatIsThereToAStepOfItsConverter() throws Exception {
    for (String line : madeUp()) {
      reading(line)
          .filter(r -> r.micros() > 11_100_000 && r.micros() < 40_900_000)
          .ifPresent(
              r -> {
                double seconds = r.micros() / 1e6;
                double vacuum = 88 - 85 * Math.exp(-(seconds - 11) / 5.2);
                assertThat(-r.pascals() / 1000.0).isCloseTo(vacuum, within(ADC_STEP / 1000));
              });
    }
  }

  private List<String> madeUp() throws IOException, InterruptedException {
    Path sensor = build.make("sensor-linux");
    return FirmwareBuild.runs(List.of(sensor.toString(), "at-once")).lines().toList();
  }

  private static Optional<Reading> reading(String line) {
    return LineDecoder.decode(line) instanceof Good good && good.content() instanceof Reading r
        ? Optional.of(r)
        : Optional.empty();
  }

  @Test
  void aTrimIsWrittenTwiceAndItsRowsAddUp() throws Exception {
    Path trim = build.make("trim");
    List<String> rows =
        FirmwareBuild.runs(
                List.of(trim.toString(), "tp-07", "-850", "0", "-78400", "-80000", "226"))
            .lines()
            .toList();
    assertThat(rows).hasSize(7).last().isEqualTo(":00000001FF");
    // Intel HEX: the bytes of a row, its check byte too, add up to a multiple of 256.
    for (String row : rows) {
      int sum = 0;
      for (byte one : HexFormat.of().parseHex(row.substring(1))) {
        sum += one;
      }
      assertThat(sum & 0xFF).as(row).isZero();
    }
    assertThat(rows.get(0).substring(9, 41)).isEqualTo(rows.get(3).substring(9, 41));
  }
}
