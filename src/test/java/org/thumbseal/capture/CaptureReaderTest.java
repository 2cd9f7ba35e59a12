package org.thumbseal.capture;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.nio.charset.StandardCharsets;
import java.time.Instant;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.stream.Collectors;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class CaptureReaderTest {
  private static final String MAGIC = "# thumbseal capture 1\n";
  private static final Instant STARTED = Instant.parse("2026-03-02T07:15:00Z");
  private static final CaptureHeader HEADER =
      new CaptureHeader(STARTED, Map.of())
          .with("source", "/dev/ttyUSB0")
          .with("note", "Zweitgerät, 2. Stock");
  private static final List<CaptureLine> LINES =
      List.of(
          new CaptureLine(12_345, "S,0,1200345,-35*EAE5"),
          new CaptureLine(12_345, "\u0083*\\\r"),
          new CaptureLine(1_022_345, "S,1,1210308,112*43F9"));
  private static final String FILE =
      HEADER.format() + LINES.stream().map(l -> l.format() + "\n").collect(Collectors.joining());

  /** The example of the format, to the letter. */
  @Test
  void writesTheHeaderOfTheFormat() {
    CaptureHeader header = new CaptureHeader(STARTED, Map.of()).with("source", "/dev/ttyUSB0");
    assertThat(header.format())
        .isEqualTo(
            """
            # thumbseal capture 1
            # started 2026-03-02T07:15:00.000Z
            # source /dev/ttyUSB0
            """);
  }

  @Test
  void readsBackWhatWasWritten() throws CaptureFormatException {
    assertThat(read(FILE)).isEqualTo(new Capture(HEADER, LINES, 0));
    assertThat(read(FILE).header().fact("note")).contains("Zweitgerät, 2. Stock");
    assertThat(read(FILE).header().fact("asset")).isEmpty();
  }

  @Test
  void readsLinesEndedByCrLf() throws CaptureFormatException {
    assertThat(read(FILE.replace("\n", "\r\n"))).isEqualTo(read(FILE));
  }

  @Test
  void readsAFileCutOffAtAnyByteUpToItsLastWholeLine() throws CaptureFormatException {
    byte[] whole = FILE.getBytes(StandardCharsets.UTF_8);
    int head = HEADER.format().getBytes(StandardCharsets.UTF_8).length;
    for (int length = MAGIC.length(); length <= whole.length; length++) {
      Capture capture = CaptureReader.read(Arrays.copyOf(whole, length));
      assertThat(capture.unreadable()).as("cut at %d", length).isZero();
      assertThat(capture.lines()).isEqualTo(LINES.subList(0, lineEnds(whole, head, length)));
    }
  }

  private static int lineEnds(byte[] bytes, int from, int to) {
    int ends = 0;
    for (int i = from; i < to; i++) {
      ends += bytes[i] == '\n' ? 1 : 0;
    }
    return ends;
  }

  @Test
  void refusesAFileCutOffInItsFirstLine() {
    for (int length = 0; length < MAGIC.length(); length++) {
      String start = FILE.substring(0, length);
      assertThatThrownBy(() -> read(start)).isInstanceOf(CaptureFormatException.class);
    }
  }

  @Test
  void countsTheLinesItCannotReadAndGoesOn() throws CaptureFormatException {
    String damaged = FILE.replace("0.012345 S", "0.0?2345 S") + "# late 1\n\u0000\u0001\n";
    assertThat(read(damaged)).isEqualTo(new Capture(HEADER, LINES.subList(1, 3), 3));
    assertThat(read(FILE + "x".repeat(1_000_000) + "\n").unreadable()).isEqualTo(1);
  }

  @Test
  void theFirstOfTwoHeaderLinesOfOneKeyCounts() throws CaptureFormatException {
    String twice = HEADER.format() + "# source other\n# started 1999-01-01T00:00:00Z\n";
    assertThat(read(twice).header()).isEqualTo(HEADER);
  }

  @Test
  void keepsHeaderLinesWithoutValueAndSkipsThoseWithoutKey() throws CaptureFormatException {
    Capture capture = read(MAGIC + "# started 2026-03-02T07:15:00Z\n# asset\n# \n#\n");
    assertThat(capture.header().facts()).isEqualTo(Map.of("asset", ""));
    assertThat(capture.unreadable()).isEqualTo(1);
  }

  @Test
  void readsStartedWithAnyOffset() throws CaptureFormatException {
    String local = FILE.replace("07:15:00.000Z", "13:00:00+05:45");
    assertThat(read(local).header().started()).isEqualTo(STARTED);
  }

  @ParameterizedTest
  @ValueSource(strings = {"yesterday", "", "2026-03-02", "2026-13-02T07:15:00Z"})
  void refusesAStartThatIsNoTimeInOneLine(String started) {
    assertThatThrownBy(() -> read(MAGIC + "# started " + started + "\n"))
        .isInstanceOf(CaptureFormatException.class)
        .hasMessageContaining("started")
        .message()
        .hasLineCount(1)
        .hasSizeLessThan(200);
  }

  @Test
  void quotesOnlyTheBeginningOfALongLine() {
    assertThatThrownBy(() -> read(MAGIC + "# started " + "9".repeat(5_000) + "\n"))
        .isInstanceOf(CaptureFormatException.class)
        .message()
        .hasSizeLessThan(200);
  }

  @Test
  void refusesLinesWithoutAStart() {
    assertThatThrownBy(() -> read(MAGIC + LINES.get(0).format() + "\n"))
        .isInstanceOf(CaptureFormatException.class)
        .hasMessageContaining("# started");
  }

  @ParameterizedTest
  @ValueSource(strings = {"# thumbseal capture 2\n", "# thumbseal capture 10\n"})
  void namesTheVersionItDoesNotKnow(String file) {
    assertThatThrownBy(() -> read(file))
        .isInstanceOf(CaptureFormatException.class)
        .hasMessageContaining(file.strip())
        .hasMessageContaining("# thumbseal capture 1");
  }

  @ParameterizedTest
  @ValueSource(strings = {"", "\n", "time;pressure\n", "\u007fELF\u0000\n", "# thumbseal\n"})
  void refusesOtherFiles(String file) {
    assertThatThrownBy(() -> read(file))
        .isInstanceOf(CaptureFormatException.class)
        .hasMessageContaining("not a capture file");
  }

  @Test
  void aHostileFactCannotForgeLines() throws CaptureFormatException {
    Map<String, String> hostile =
        Map.of("asset", "A\n0.000001 S,0,1200345,-35*EAE5\r\n# source forged", "a b\nc", "d");
    Capture capture = read(new CaptureHeader(STARTED, hostile).format());
    assertThat(capture.lines()).isEmpty();
    assertThat(capture.header().started()).isEqualTo(STARTED);
    assertThat(capture.header().fact("source")).isEmpty();
    assertThat(capture.header().fact("asset").orElseThrow()).startsWith("A 0.000001 S,0");
    assertThat(capture.header().fact("a-b-c")).contains("d");
  }

  private static Capture read(String text) throws CaptureFormatException {
    return CaptureReader.read(text.getBytes(StandardCharsets.UTF_8));
  }
}
