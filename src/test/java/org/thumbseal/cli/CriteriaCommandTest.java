package org.thumbseal.cli;

import static java.nio.charset.StandardCharsets.UTF_8;
import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.thumbseal.grade.Criteria;
import org.thumbseal.json.CriteriaFile;

/** The criteria as a file to edit, and a file that is checked. */
class CriteriaCommandTest {
  @TempDir private Path folder;

  @Test
  void theDefaultsArePrintedAsAFileThatReadsBackToThem() throws Exception {
    CommandRun run = CommandRun.of("criteria");

    assertThat(run.code()).isZero();
    assertThat(run.err()).isEmpty();
    assertThat(CriteriaFile.read(file(run.out()))).isEqualTo(Criteria.DEFAULT);
    assertThat(run.out()).contains("\"rise\" : \"65 kPa\"", "\"altitudeRule\" : \"scale\"");
  }

  /** NIST SP 811 B.8: 600 mmHg = 79.993 kPa. */
  @Test
  void aFileIsPrintedWithAllThatIsInForce() throws Exception {
    CommandRun run =
        CommandRun.of("criteria", file("{\"maximumVacuumLimit\": \"600 mmHg\", \"jar\": \"2 L\"}"));

    assertThat(run.code()).isZero();
    assertThat(run.out())
        .contains("\"maximumVacuumLimit\" : \"79.993", "\"jar\" : \"2 L\"")
        .contains("\"riseTimeLimit\" : \"10 s\"")
        .doesNotContain("ratedSpeed");
  }

  @Test
  void aMistakeIsOneLine() throws Exception {
    Path file = file("{\"ratedSpeed\": \"30 gallon/min\"}");
    CommandRun run = CommandRun.of("criteria", file);

    assertThat(run.code()).isEqualTo(2);
    assertThat(run.out()).isEmpty();
    assertThat(run.err())
        .isEqualTo(
            "thumbseal: criteria "
                + file
                + ": ratedSpeed: 'gallon/min' is not the unit of a pumping speed: L/min or m3/h\n");
  }

  @Test
  void theJarComesFromOptionThenHeaderThenCriteria() throws Exception {
    Path criteria = file("{\"jar\": \"3 L\", \"ratedSpeed\": \"40 L/min\"}");
    Path without = Path.of("fixtures/independent/healthy-100hz.log");
    Path header = folder.resolve("header.log");
    String started = "# started 2026-03-02T07:15:00.000Z\n";
    Files.writeString(
        header, Files.readString(without, UTF_8).replace(started, started + "# jar-l 2.5\n"));

    assertThat(jar(without)).isZero();
    assertThat(jar(without, "--criteria", criteria)).isEqualTo(3);
    assertThat(jar(header, "--criteria", criteria)).isEqualTo(2.5);
    assertThat(jar(header, "--criteria", criteria, "--jar-l", 2)).isEqualTo(2);
  }

  @Test
  void jarAndRatedSpeedStandInTheResult() throws Exception {
    Path criteria = file("{\"jar\": \"3 L\", \"ratedSpeed\": \"2.4 m3/h\"}");
    Path capture = Path.of("fixtures/independent/healthy-100hz.log");

    assertThat(
            Answer.to("replay", "--json", "--criteria", criteria, capture)
                .onlyDocument()
                .at("/criteria/ratedSpeed")
                .toString())
        .isEqualTo("{\"unit\":\"L/min\",\"value\":40}");
    assertThat(Answer.to("replay", "--json", capture).onlyDocument().get("criteria").has("jar"))
        .isFalse();
  }

  private static double jar(Path capture, Object... options) {
    Object[] line = new Object[options.length + 3];
    line[0] = "replay";
    line[1] = "--json";
    line[2] = capture;
    System.arraycopy(options, 0, line, 3, options.length);
    return Answer.to(line).onlyDocument().at("/test/jar/value").asDouble(0);
  }

  private Path file(String text) throws Exception {
    return Files.writeString(folder.resolve("criteria.json"), text, UTF_8);
  }
}
