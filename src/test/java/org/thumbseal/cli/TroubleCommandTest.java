package org.thumbseal.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.thumbseal.care.Inspection;
import org.thumbseal.care.Work;
import org.thumbseal.json.InspectionReader;
import org.thumbseal.json.JsonGate;

/** The command {@code trouble} as it is typed, and as it is answered. */
@Timeout(120)
class TroubleCommandTest {
  private static final String CAUTIONS = "yes,yes,yes,yes,yes";
  private static final String FUSE = CAUTIONS + ",yes,does-not-start,yes,no,no,no,yes,yes,no";

  @TempDir private Path folder;
  private Path results;
  private Path key;

  @BeforeEach
  void places() {
    results = folder.resolve("results");
    key = folder.resolve("keys/k.pem");
  }

  private CommandRun trouble(String typed, Object... args) {
    List<String> all = new ArrayList<>(List.of("trouble", "SP-014", "--by", "A. Nurse"));
    Arrays.stream(args).map(Object::toString).forEach(all::add);
    all.addAll(List.of("--results", results.toString(), "--key", key.toString()));
    ByteArrayOutputStream out = new ByteArrayOutputStream();
    ByteArrayOutputStream err = new ByteArrayOutputStream();
    byte[] in = typed.getBytes(StandardCharsets.UTF_8);
    int code =
        Main.run(all.toArray(String[]::new), new Streams(new ByteArrayInputStream(in), out, err));
    return new CommandRun(
        code, out.toString(StandardCharsets.UTF_8), err.toString(StandardCharsets.UTF_8));
  }

  private List<Path> documents() throws Exception {
    return new ResultFiles(results).documents();
  }

  @Test
  void answersAreSealedAndVerify() throws Exception {
    CommandRun run = trouble("", "--answers", FUSE, "--note", "smelt of nothing");
    assertThat(run.code()).as(run.err()).isZero();
    assertThat(run.out())
        .contains("Likely: Something inside draws too much current.")
        .contains("Who: a qualified technician only; local rules decide.", "Recorded:")
        .contains("finds no pump fit for use");
    assertThat(documents()).hasSize(1);
    Inspection read = InspectionReader.read(JsonGate.read(documents().get(0)));
    assertThat(read.said().done().work()).isEqualTo(Work.TROUBLE_GUIDE);
    assertThat(read.said().done().inOrder()).isFalse();
    assertThat(read.said().more().answers()).hasSize(14);
    assertThat(read.said().more().answers().get(6).answer()).isEqualTo("does-not-start");
    assertThat(read.said().more().answers().get(6).words().orElseThrow().question())
        .isEqualTo("What is wrong with it?");
    assertThat(read.said().more().outcome().orElseThrow().code()).isEqualTo("fuse-blows-again");
    CommandRun verify = CommandRun.of("verify", results, "--key", key);
    assertThat(verify.code()).as(verify.out()).isZero();
  }

  @Test
  void aQuestionAtATimeWithMistakesAndBack() throws Exception {
    String typed = "no\nyes\ny\ny\ny\ny\nperhaps\ny\n2\nback\n3\nno\nback\nback\n3\nno\nno\nno\n";
    CommandRun run = trouble(typed);
    assertThat(run.code()).as(run.err()).isZero();
    assertThat(run.out())
        .startsWith("\nCAUTION. ")
        .containsOnlyOnce("Type yes when it is so; the guide does not go on before.")
        .containsOnlyOnce("That is no answer here: type yes or no, or back.")
        .contains("A crack or chip in jar or lid");
    Inspection read = InspectionReader.read(JsonGate.read(documents().get(0)));
    assertThat(read.said().more().answers().stream().map(Inspection.Answer::question))
        .endsWith("complaint", "control-maximum", "gasket-seated", "jar-whole");
  }

  @Test
  void theLeakLeadsToTheSearch() {
    CommandRun run = trouble("", "--answers", CAUTIONS + ",yes,weak,no,no,yes,no,yes");
    assertThat(run.out()).contains("thumbseal seek-leak SP-014");
  }

  @Test
  void whoeverStopsKeepsTheAnswersAndNothingIsWritten() {
    CommandRun run = trouble("yes\nyes\nback\nyes\nyes\n");
    assertThat(run.code()).isEqualTo(ExitCode.NOT_PASSED);
    assertThat(run.err())
        .isEqualTo(
            "thumbseal: the guide was not gone through to its end, nothing was recorded;"
                + " go on with --answers yes,yes,yes\n");
    assertThat(results).doesNotExist();
    assertThat(key).doesNotExist();
    CommandRun on = trouble("yes\nyes\nno\n", "--answers", "yes,yes,yes");
    assertThat(on.code()).as(on.err()).isZero();
    assertThat(on.out()).contains("Do not switch it on").doesNotContain("on no patient");
  }

  @Test
  void theSameAnswersOnOneDayAreThereOnce() throws Exception {
    trouble("", "--answers", FUSE);
    assertThat(trouble("", "--answers", FUSE).out()).contains("Was recorded already:");
    assertThat(documents()).hasSize(1);
  }

  @Test
  void programsGetTheDocumentAlone() throws Exception {
    CommandRun run = trouble("no\n", "--answers", CAUTIONS, "--json");
    assertThat(run.out()).hasLineCount(1);
    assertThat(Files.readString(documents().get(0)).strip()).isEqualTo(run.out().strip());
    assertThat(run.err()).contains("Is all of it whole", "Likely: ");
  }

  @Test
  void theRecordsKnowItAndItCanBeTakenBack() throws Exception {
    trouble("", "--answers", FUSE);
    CommandRun show = CommandRun.of("records", "show", "--results", results, "--key", key);
    assertThat(show.code()).as(show.out() + show.err()).isZero();
    CommandRun amend =
        CommandRun.of(
            "amend", documents().get(0), "--void", "--reason", "was another pump", "--key", key);
    assertThat(amend.code()).as(amend.err()).isZero();
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "yes,maybe|--answers: answer 2, to 'caution-unplug', is 'maybe'; say yes",
        "no|--answers: answer 1, to 'caution-patient', is 'no'; say yes",
        "yes,yes,yes,yes,yes,no,yes,no|--answers: the guide was at its end, and there were 2 more",
        "yes,yes,yes,yes,yes,yes,4|--answers: answer 7, to 'complaint', is '4'; say does-not-start",
      })
  void aMistakeInGivenAnswersIsOneLine(String answers, String message) {
    CommandRun run = trouble("", "--answers", answers);
    assertThat(run.err()).startsWith("thumbseal: " + message).hasLineCount(1);
    assertThat(run.code()).isEqualTo(ExitCode.USAGE);
    assertThat(results).doesNotExist();
  }

  @Test
  void whoAnswersIsSaid() {
    CommandRun run = CommandRun.of("trouble", "SP-014");
    assertThat(run.code()).isEqualTo(ExitCode.USAGE);
    assertThat(run.err()).contains("--by").hasLineCount(1);
  }
}
