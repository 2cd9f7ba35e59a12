package org.thumbseal.cli;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.node.ObjectNode;

/** Replays of what other people have measured (fixtures/measured, sources beside the files). */
class MeasuredReplayTest {
  private static final Path FOLDER = Path.of("fixtures", "measured");
  private static final String SUCTION_CUP = "velasale_1a1e851_trial4.csv";

  /**
   * A suction cup: pump on at sample 27, cup on the surface at 192, off it at 256, pump off at 388
   * (0-based; read off the file by the people who picked it as a reference).
   */
  @ParameterizedTest
  @CsvSource({"0, idle, 0", "1, open, 27", "2, rise, 192", "4, release, 256", "5, idle, 388"})
  void theSuctionCupIsCutIntoItsPhases(int index, String phase, int sample) throws IOException {
    JsonNode phases =
        replay(SUCTION_CUP, "time=Time:s,pressure=data:hPa:absolute")
            .onlyDocument()
            .at("/test/phases");

    assertThat(phases).hasSize(6);
    assertThat(phases.get(index).get("phase").stringValue()).isEqualTo(phase);
    assertThat(firstSampleAt(phases.get(index).get("start").doubleValue()))
        .isCloseTo(sample, within(2));
  }

  /** Index of the first row that is not before a time, s since the first row. */
  private static int firstSampleAt(double seconds) throws IOException {
    List<Double> times =
        Files.readAllLines(FOLDER.resolve(SUCTION_CUP)).stream()
            .skip(1)
            .map(row -> Double.valueOf(row.substring(0, row.indexOf(','))))
            .toList();
    int index = 0;
    // the document rounds to 0.1 ms
    while (times.get(index) - times.get(0) < seconds - 1e-4) {
      index++;
    }
    return index;
  }

  /** The plateaus of the file: 964 to 967 hPa with the cup open, 641 hPa with it on the surface. */
  @Test
  void theSuctionCupIsMeasuredAgainstItsOwnQuietStart() {
    ObjectNode document =
        replay(SUCTION_CUP, "time=Time:s,pressure=data:hPa:absolute").onlyDocument();

    // blocked for less than two seconds: nothing can be said about ten
    assertThat(Answer.verdict(document)).isEqualTo("invalid");
    assertThat(Answer.reasons(document)).contains("released-early");
    assertThat(Answer.measured(document, "openVacuum")).isBetween(4.9, 5.4);
    assertThat(Answer.measured(document, "maximumVacuum")).isBetween(37.0, 38.0);
    assertThat(document.at("/test/ambient/quantity/value").doubleValue())
        .isCloseTo(101.70, within(0.02));
    assertThat(document.at("/test/ambient/from").stringValue()).isEqualTo("at-rest");
  }

  /** An inflation, taken upside down: the values are those of a published-data survey's own fit. */
  @Test
  void theInflationHasItsTimeConstant() {
    ObjectNode document =
        replay("softbot_sweep_kp_30.csv", "time=Time:s,pressure=Pressure:kPa:vacuum")
            .onlyDocument();

    double asymptote = Answer.measured(document, "asymptote");
    assertThat(asymptote).isCloseTo(29.49, within(0.01 * 29.49));
    assertThat(Answer.measured(document, "timeConstant")).isCloseTo(0.711, within(0.01 * 0.711));
    assertThat(asymptote - Answer.measured(document, "openVacuum"))
        .isCloseTo(28, within(0.01 * 28));
  }

  /**
   * Pressure above ambient and noise are no test; the answer says so in one line. (qc3 has no unit
   * of its own; in kPa its noise would be ten times what the detector is made for.)
   */
  @ParameterizedTest
  @CsvSource({
    "evazillen_Ultimaker_020.csv,   'time=1:us,pressure=3:bar:vacuum'",
    "tcpd_quality_control_1to5.csv, 'time=index:s,pressure=qc1_cp146:kPa'",
    "tcpd_quality_control_1to5.csv, 'time=index:s,pressure=qc3_cp179_outlier42:mbar'",
    "tcpd_quality_control_1to5.csv, 'time=index:s,pressure=qc5_none:kPa'",
    "softbot_sweep_kp_30.csv,       'time=Time:s,pressure=Pressure:kPa'",
  })
  void whereThereIsNoTestTheAnswerIsOneLine(String file, String columns) {
    Answer answer = replay(file, columns);

    assertThat(answer.code()).isEqualTo(1);
    assertThat(answer.out()).isEmpty();
    assertThat(answer.err())
        .isEqualTo(
            "thumbseal: "
                + FOLDER.resolve(file)
                + ": no test in it (the inlet was never blocked)\n");
  }

  /** 7.7 bar let out of a chamber looks like a rise of the vacuum from far below nothing. */
  @Test
  void compressedAirThatIsLetOutIsNotGraded() {
    ObjectNode document =
        replay("evazillen_Ultimaker_020.csv", "time=1:us,pressure=3:bar").onlyDocument();

    assertThat(Answer.verdict(document)).isEqualTo("invalid");
    assertThat(Answer.reasons(document)).startsWith("zero-drift");
    assertThat(document.at("/reasons/0/text").stringValue())
        .contains("767.2 kPa above the air around it", "--columns");
    // no single exponential (measured), and flagged where its value stands too
    assertThat(document.at("/diagnostics/exponentialFit/trusted").booleanValue()).isFalse();
    assertThat(document.at("/measurements/timeConstant/trusted").booleanValue(true)).isFalse();
    assertThat(document.at("/measurements/asymptote/trusted").booleanValue(true)).isFalse();
  }

  private static Answer replay(String file, String columns) {
    return Answer.to("replay", "--json", "--columns", columns, FOLDER.resolve(file));
  }
}
