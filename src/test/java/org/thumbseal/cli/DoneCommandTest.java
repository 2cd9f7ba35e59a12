package org.thumbseal.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import java.util.ArrayList;
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

/** The command {@code done} as it is typed. */
@Timeout(120)
class DoneCommandTest {
  @TempDir private Path folder;
  private Path results;
  private Path key;

  @BeforeEach
  void places() {
    results = folder.resolve("results");
    key = folder.resolve("keys/k.pem");
  }

  private CommandRun done(String... args) {
    List<Object> all = new ArrayList<>(List.of("done"));
    all.addAll(List.of(args));
    all.addAll(List.of("--results", results, "--key", key));
    return CommandRun.of(all.toArray());
  }

  private List<Path> documents() throws Exception {
    return new ResultFiles(results).documents();
  }

  @Test
  void isSealedAndVerifies() throws Exception {
    CommandRun run = done("SP-014", "sterilisation", "--by", "A. Nurse", "--on", "2026-03-02");
    assertThat(run.code()).as(run.err()).isZero();
    assertThat(run.out()).startsWith("SP-014: sterilisation on 2026-03-02: recorded\n");
    assertThat(documents()).hasSize(1);
    assertThat(documents().get(0).getFileName().toString())
        .matches("\\d{8}T\\d{6}Z_SP-014_inspection_[0-9a-f]{8}\\.json");
    Inspection read = InspectionReader.read(JsonGate.read(documents().get(0)));
    assertThat(read.said().done().work()).isEqualTo(Work.STERILISATION);
    CommandRun verify = CommandRun.of("verify", results, "--key", key);
    assertThat(verify.code()).as(verify.out()).isZero();
  }

  @Test
  void saidTwiceItIsThereOnce() throws Exception {
    String[] said = {"SP-014", "repair", "--by", "Workshop", "--on", "2026-03-02"};
    assertThat(done(said).code()).isZero();
    CommandRun again = done(said);
    assertThat(again.code()).isZero();
    assertThat(again.out()).contains("was recorded already");
    assertThat(documents()).hasSize(1);
  }

  @Test
  void anUnfitPumpIsToBeTakenOut() {
    CommandRun run =
        done(
            "SP-014", "yearly-inspection", "--by", "M. Otieno", "--not-in-order", "--note", "plug");
    assertThat(run.out()).contains("not in order").contains("Take the pump out of use");
  }

  @Test
  void aWordCanBeTakenBack() throws Exception {
    assertThat(done("SP-014", "repair", "--by", "Workshop").code()).isZero();
    CommandRun amend =
        CommandRun.of(
            "amend", documents().get(0), "--void", "--reason", "was another pump", "--key", key);
    assertThat(amend.code()).as(amend.err()).isZero();
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "SP-014|painting|A|2026-03-02|there is no work 'painting'; say one of yearly-inspection",
        "SP-014|occlusion-test|A|2026-03-02|there is no work 'occlusion-test'",
        "SP-014|repair|A|2026-02-30|--on: '2026-02-30' is no date; write it as",
        "SP-014|repair|A|2999-01-01|--on 2999-01-01 is still to come",
        "SP-014|repair|' '|2026-03-02|--by must be 1 to 100 plain characters",
        "' '|repair|A|2026-03-02|ASSET must be 1 to 100 plain characters",
      })
  void aMistakeIsOneLineAndNothingIsWritten(
      String asset, String work, String by, String on, String message) {
    CommandRun run = done(asset, work, "--by", by, "--on", on);
    assertThat(run.err()).startsWith("thumbseal: " + message).hasLineCount(1);
    assertThat(run.code()).isEqualTo(2);
    assertThat(results).doesNotExist();
    assertThat(key).doesNotExist();
  }
}
