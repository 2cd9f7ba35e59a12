package org.thumbseal.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;
import tools.jackson.databind.node.ObjectNode;

/** {@code watch} on sources that end: it ends with them. */
@Timeout(60)
class FiniteSourcesTest {
  @TempDir private Path folder;
  private String bare = "";

  @BeforeEach
  void lines() {
    bare = CommandRun.of("simulate", "sound", "--rate", "50").out();
  }

  private CommandRun watch(String port) {
    ByteArrayOutputStream out = new ByteArrayOutputStream();
    ByteArrayOutputStream err = new ByteArrayOutputStream();
    String results = folder.resolve("results").toString();
    String key = folder.resolve("keys/k.pem").toString();
    var in = new ByteArrayInputStream(bare.getBytes(StandardCharsets.ISO_8859_1));
    String[] args = {"watch", "--port", port, "--results", results, "--key", key};
    int code = Main.run(args, new Streams(in, out, err));
    return new CommandRun(
        code, out.toString(StandardCharsets.UTF_8), err.toString(StandardCharsets.UTF_8));
  }

  private ObjectNode onlyResult() throws Exception {
    List<Path> documents = new ResultFiles(folder.resolve("results")).documents();
    assertThat(documents).hasSize(1);
    return ResultFiles.read(documents.get(0));
  }

  /** When the lines once arrived is not known, so the sensor's clock is taken as it is. */
  @Test
  void aFileOfBareLinesIsGradedByTheClockOfTheSensor() throws Exception {
    Path file = Files.writeString(folder.resolve("bare"), bare, StandardCharsets.ISO_8859_1);
    CommandRun run = watch("file:" + file);
    assertThat(run.code()).isZero();
    assertThat(run.out()).contains(": PASS unassigned, rise ").doesNotContain("clock-unsteady");
    assertThat(onlyResult().path("verdict").stringValue()).isEqualTo("pass");
  }

  @Test
  void standardInputToo() throws Exception {
    CommandRun run = watch("-");
    assertThat(run.code()).isZero();
    assertThat(run.err())
        .contains("thumbseal: -: end of input\nthumbseal: health: 1 test graded, 1 stored, ");
    assertThat(onlyResult().path("verdict").stringValue()).isEqualTo("pass");
  }

  @Test
  void whereTheFileIsStandsBelowAResultLineThatIsFull() throws Exception {
    CommandRun run = watch("sim:sound,speed=100");
    Path document = new ResultFiles(folder.resolve("results")).documents().get(0);
    assertThat(run.out()).contains(" kPa" + System.lineSeparator() + "  " + document);
  }
}
