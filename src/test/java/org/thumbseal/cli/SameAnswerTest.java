package org.thumbseal.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.TimeZone;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** The same evidence gives the same bytes, whenever and wherever it is asked. */
class SameAnswerTest {
  private static final Path CAPTURES = Path.of("fixtures", "captures");
  private static final Object[] GOLDEN =
      Stream.of("altitude", "noisy-line", "two-tests", "released-early", "capture-version-1")
          .map(name -> CAPTURES.resolve(name + ".log"))
          .toArray();
  private static final Object[] TABLE = {
    "--columns",
    "time=Time:s,pressure=data:hPa:absolute",
    Path.of("fixtures", "measured", "velasale_1a1e851_trial4.csv")
  };

  /** Command lines whose answer is held against that of this process. */
  static List<List<Object>> questions() {
    return List.of(
        with("replay", "--json"), with("replay"), List.of("simulate", "sound", "--rate", "10"));
  }

  private static List<Object> with(Object... command) {
    return Stream.of(command, TABLE, GOLDEN).flatMap(Arrays::stream).toList();
  }

  @ParameterizedTest
  @MethodSource("questions")
  void askedThreeTimes(List<Object> question) {
    Answer first = Answer.to(question.toArray());

    assertThat(first.out()).isNotEmpty();
    assertThat(Answer.to(question.toArray())).isEqualTo(first);
    assertThat(Answer.to(question.toArray())).isEqualTo(first);
  }

  /**
   * A place with its own hours, digits or decimal sign.
   *
   * @param environment of the process
   * @param options of the virtual machine
   */
  record Place(Map<String, String> environment, List<String> options) {}

  static List<Place> places() {
    return List.of(
        new Place(Map.of("TZ", "Asia/Kathmandu"), List.of("-Duser.timezone=Asia/Kathmandu")),
        new Place(Map.of("LANG", "ar_EG.UTF-8", "LC_ALL", "ar_EG.UTF-8"), List.of()),
        new Place(Map.of(), List.of("-Duser.language=ar", "-Duser.country=EG")),
        new Place(
            Map.of("TZ", "Pacific/Kiritimati"),
            List.of("-Duser.language=de", "-Duser.country=DE", "-Dfile.encoding=ISO-8859-1")),
        new Place(Map.of(), List.of("-Duser.language=tr", "-Duser.country=TR")));
  }

  @ParameterizedTest
  @MethodSource("places")
  void askedElsewhere(Place place) throws Exception {
    for (List<Object> question : questions()) {
      assertThat(elsewhere(place, question)).isEqualTo(Answer.to(question.toArray()).out());
    }
  }

  private static String elsewhere(Place place, List<Object> question) throws Exception {
    List<String> command = new ArrayList<>(ProgramProcess.command(question.toArray()));
    command.addAll(1, place.options());
    ProcessBuilder builder =
        new ProcessBuilder(command).redirectError(ProcessBuilder.Redirect.DISCARD);
    builder.environment().putAll(place.environment());
    Process process = builder.start();
    process.getOutputStream().close();
    byte[] out = process.getInputStream().readAllBytes();
    process.waitFor();
    return new String(out, StandardCharsets.UTF_8);
  }

  /** Otherwise the places above would show nothing. */
  @Test
  void thePlacesDiffer() {
    assertThat(String.format(Locale.forLanguageTag("ar-EG"), "%d", 12)).isNotEqualTo("12");
    assertThat(String.format(Locale.forLanguageTag("de-DE"), "%.1f", 1.5)).isEqualTo("1,5");
    assertThat("TITLE".toLowerCase(Locale.forLanguageTag("tr-TR"))).isNotEqualTo("title");
    assertThat(TimeZone.getTimeZone("Asia/Kathmandu").getRawOffset()).isEqualTo(20_700_000);
  }
}
