package org.thumbseal.cli;

import static org.assertj.core.api.Assertions.assertThat;

import com.networknt.schema.InputFormat;
import com.networknt.schema.SchemaRegistry;
import com.networknt.schema.SpecificationVersion;
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
import org.junit.jupiter.params.provider.ValueSource;
import org.thumbseal.archive.Archive;
import org.thumbseal.json.ExampleDocument;
import org.thumbseal.json.JsonGate;
import org.thumbseal.seal.KeyStore;
import org.thumbseal.seal.SigningKey;
import tools.jackson.databind.node.ObjectNode;

/** The command {@code amend} as it is typed, and what {@code verify} says afterwards. */
@Timeout(120)
class AmendCommandTest {
  @TempDir private Path folder;
  private Path results;
  private Path key;
  private Path result;
  private String signer = "";

  @BeforeEach
  void anUnassignedResult() throws Exception {
    results = folder.resolve("results");
    key = folder.resolve("keys/k.pem");
    SigningKey signing = KeyStore.create(key).key();
    signer = signing.verifyingKey().fingerprint();
    ObjectNode document = ExampleDocument.unsealed();
    document.remove("asset");
    try (Archive archive = Archive.open(results, signing)) {
      archive.store(ExampleDocument.unsealed(1), new byte[] {'#'});
      result = archive.store(document, new byte[] {'#'}).document();
    }
  }

  private CommandRun amend(Object... args) {
    List<Object> all = new ArrayList<>(List.of("amend", result));
    all.addAll(Arrays.asList(args));
    all.addAll(List.of("--key", key));
    return CommandRun.of(all.toArray());
  }

  private String verify(Object... what) {
    List<Object> all = new ArrayList<>(List.of("verify", "--key", key));
    all.addAll(Arrays.asList(what));
    CommandRun run = CommandRun.of(all.toArray());
    assertThat(run.err()).isEmpty();
    assertThat(run.code()).as(run.out()).isZero();
    return run.out();
  }

  private List<Path> corrections() throws Exception {
    return new ResultFiles(results)
        .documents().stream().filter(f -> f.toString().contains("_correction_")).toList();
  }

  private void assertOneLine(CommandRun run, int code, String message) throws Exception {
    assertThat(run.out()).isEmpty();
    assertThat(run.err()).startsWith("thumbseal: " + message).hasLineCount(1).endsWith("\n");
    assertThat(run.code()).isEqualTo(code);
    assertThat(corrections()).isEmpty();
  }

  @Test
  void anUnassignedResultGetsItsPump() throws Exception {
    byte[] before = Files.readAllBytes(result);
    CommandRun run = amend("--asset", "SP-014", "--by", "A. Miller", "--reason", "tag was hidden");

    Path correction = corrections().get(0);
    String day = JsonGate.read(correction).path("correctedAt").stringValue().substring(0, 10);
    String what = "asset unassigned -> SP-014: tag was hidden";
    assertThat(run)
        .isEqualTo(
            new CommandRun(0, result + ": corrected: " + what + "\n  " + correction + "\n", ""));
    assertThat(correction.getFileName().toString()).contains("_SP-014_correction_");
    assertThat(Files.readAllBytes(result)).isEqualTo(before);
    String line = result + ": corrected by " + signer + ", A. Miller, " + day + ": " + what + "\n";
    line += result + ": stands now: asset SP-014\n";
    assertThat(verify(result))
        .isEqualTo(result + ": good seal by a trusted key (" + signer + ")\n" + line);
    assertThat(verify(results)).startsWith(line).contains("3 documents and 2 captures in 1 chain");
    assertThat(verify(correction)).endsWith(line);
  }

  @Test
  void aCaptureIsToldFromItsDocument() throws Exception {
    Path capture = folder.resolve("my.log");
    Files.copy(Path.of("fixtures", "captures", "sound.log"), capture);
    String alone = capture + ": is a capture, and no sealed document lies beside it: 'thumbseal";
    assertOneLine(CommandRun.of("amend", capture, "--void", "--reason", "x"), 2, alone);
    assertOneLine(CommandRun.of("verify", capture, "--key", key), 2, alone);

    Path document = Files.copy(result, folder.resolve("my.json"));
    String beside = capture + ": is a capture; the sealed document is " + document + "\n";
    assertOneLine(CommandRun.of("amend", capture, "--void", "--reason", "x"), 2, beside);
    assertOneLine(CommandRun.of("verify", capture, "--key", key), 2, beside);
  }

  @Test
  void programsAreToldToo() throws Exception {
    String sealed = amend("--asset", "SP-014", "--note", "hose was old", "--json").out();
    assertThat(
            SchemaRegistry.withDefaultDialect(SpecificationVersion.DRAFT_2020_12)
                .getSchema(CommandRun.of("schema", "correction").out(), InputFormat.JSON)
                .validate(sealed, InputFormat.JSON))
        .isEmpty();
    amend("--void", "--reason", "wrong hose");

    ObjectNode told =
        JsonGate.read(
            verify("--json", result)
                .lines()
                .skip(1)
                .findFirst()
                .orElseThrow()
                .getBytes(StandardCharsets.UTF_8));
    assertThat(told.path("file").stringValue()).isEqualTo(result.toString());
    assertThat(told.path("corrections")).hasSize(2);
    assertThat(told.at("/corrections/0/change/note").stringValue()).isEqualTo("hose was old");
    assertThat(told.at("/corrections/1/answer").stringValue()).isEqualTo("trusted-key");
    assertThat(told.path("standing"))
        .isEqualTo(
            JsonGate.read(
                ("{\"asset\":{\"id\":\"SP-014\"},\"note\":\"hose was old\",\"reason\":\"wrong hose\","
                        + "\"void\":true}")
                    .getBytes(StandardCharsets.UTF_8)));
  }

  @Test
  void voidAndBackAgain() throws Exception {
    amend("--void", "--reason", "wrong hose");
    assertThat(verify(results)).contains(": VOID: wrong hose\n");
    CommandRun again = amend("--unvoid", "--reason", "it was the right one", "--asset", "SP-3");

    assertThat(again.out())
        .contains("corrected: asset unassigned -> SP-3; counts again: it was the right one");
    assertThat(corrections()).hasSize(2);
  }

  @Test
  void fingersThatAreTooQuick() throws Exception {
    amend("--asset", "SP-014");
    Path first = corrections().get(0);
    CommandRun again = amend("--asset", "SP-014");

    assertThat(again.code()).isZero();
    assertThat(again.err())
        .isEqualTo(
            "thumbseal: "
                + result
                + ": is there already, nothing was written; last correction: "
                + first
                + "\n");
    assertThat(corrections()).containsExactly(first);
    amend("--asset", "SP-2");
    amend("--asset", "SP-014");
    assertThat(corrections()).hasSize(3);
  }

  @Test
  void whatTheResultSaysAnyway() throws Exception {
    result =
        new ResultFiles(results)
            .documents().stream()
                .filter(f -> f.toString().contains("SP-014"))
                .findFirst()
                .orElseThrow();
    assertOneLine(amend("--asset", "SP-014"), 0, result + ": says so already; nothing was written");
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      textBlock =
          """
          | say what is wrong with the result: --asset ID, --note TEXT, or --void --reason TEXT
          --reason because | say what is wrong with the result
          --void | --void needs a --reason
          --unvoid | --unvoid needs a --reason
          --void --unvoid --reason x | give --void or --unvoid, not both
          --void --reason x --asset SP-1 | give --asset or --void
          --void --reason | Expected parameter
          --asset= | --asset must be 1 to 100 plain characters
          --note= | --note must be 1 to 1000 plain characters
          --by= --note x | --by must be 1 to 100 plain characters
          """)
  void mistakes(String options, String message) throws Exception {
    Object[] args = options == null ? new Object[0] : options.split(" ");
    CommandRun run = amend(args);
    assertThat(run.out()).isEmpty();
    assertThat(run.err().lines().findFirst().orElse("")).contains(message);
    assertThat(run.code()).isEqualTo(2);
    assertThat(corrections()).isEmpty();
  }

  @ParameterizedTest
  @ValueSource(strings = {"a\nb", "a\u001b[2J", "a\u0000", "a\u0085b", "\ud800", "a\tb"})
  void textThatIsNone(String text) throws Exception {
    assertOneLine(amend("--asset", text), 2, "--asset must be 1 to 100 plain characters");
    assertOneLine(amend("--note", text), 2, "--note must be 1 to 1000 plain characters");
    assertOneLine(
        amend("--void", "--reason", text), 2, "--reason must be 1 to 1000 plain characters");
  }

  @Test
  void textThatIsTooLong() throws Exception {
    assertOneLine(amend("--asset", "x".repeat(101)), 2, "--asset must be 1 to 100");
    assertOneLine(amend("--note", "x".repeat(1001)), 2, "--note must be 1 to 1000");
    assertThat(amend("--note", "x".repeat(1000), "--asset", "y".repeat(100)).code()).isZero();
  }

  /** They are kept as they are, but choose no file and turn no line round. */
  @ParameterizedTest
  @ValueSource(strings = {"../../x", "CON", "a/b", "..\\..\\x", "\u202egnp.x", "\u2066x", "-rf"})
  void evilNamesDoNoHarm(String evil) throws Exception {
    CommandRun run = amend("--asset=" + evil, "--note=" + evil, "--by=" + evil);

    assertThat(run.code()).as(run.err()).isZero();
    assertThat(run.out() + verify(results)).doesNotContain("\u202e", "\u2066");
    Path correction = corrections().get(0);
    assertThat(results.relativize(correction).getNameCount()).isEqualTo(2);
    assertThat(correction.getFileName().toString()).matches("[A-Za-z0-9._-]+");
    assertThat(JsonGate.read(correction).at("/change/asset/id").stringValue()).isEqualTo(evil);
    try (var besides = Files.list(folder)) {
      assertThat(besides.map(f -> f.getFileName().toString()))
          .containsExactlyInAnyOrder("keys", "results");
    }
  }

  @Test
  void whatIsNoResultInADirectory() throws Exception {
    Path alone = Files.copy(result, folder.resolve("alone.json"));
    Path head = results.resolve("head.json");
    Path capture = ResultFiles.capture(result);
    Path good = result;
    result = alone;
    assertOneLine(amend("--note", "x"), 2, alone + ": lies in no result directory; name the file");
    result = head;
    assertOneLine(
        amend("--note", "x"),
        2,
        head + ": is neither the result of a test nor a word about a pump");
    result = results;
    assertOneLine(amend("--note", "x"), 2, results + ": is a directory, not a file");
    result = folder.resolve("none.json");
    assertOneLine(amend("--note", "x"), 2, result + ": no such file");
    result = capture;
    CommandRun run = amend("--note", "x");
    assertThat(run.err()).endsWith("; name the document beside it, *.json\n").hasLineCount(1);
    result = good;
    assertThat(amend("--note", "x").code()).isZero();
  }

  @Test
  void correctionsAndCalibrationsAreNotAmended() throws Exception {
    amend("--note", "x");
    String name = result.getFileName().toString();
    result = corrections().get(0);
    CommandRun run = amend("--note", "y");
    assertThat(run.err())
        .isEqualTo(
            "thumbseal: "
                + result
                + ": is a correction itself; amend the result that it corrects, "
                + name
                + "\n");
    assertThat(run.code()).isEqualTo(2);

    CommandRun.of(
        "calibrate",
        "--sensor",
        "tp-01",
        "--reference",
        "RG-7",
        "--certificate",
        "C-1",
        "--reference-uncertainty",
        "0.25 kPa",
        "--pair",
        "0=0",
        "79.6=81.2",
        "--results",
        results,
        "--key",
        key);
    result =
        new ResultFiles(results)
            .documents().stream()
                .filter(f -> f.toString().contains("_calibration_"))
                .findFirst()
                .orElseThrow();
    assertThat(amend("--note", "y").err())
        .isEqualTo(
            "thumbseal: " + result + ": is a calibration; calibrate the sensor again instead\n");
  }

  @Test
  void brokenSealsAndCapturesAreNotAmended() throws Exception {
    String whole = Files.readString(result);
    Files.writeString(result, whole.replace("88.41", "98.41"));
    assertOneLine(
        amend("--note", "x"),
        1,
        result + ": not amended: broken seal: the content is not what was signed");
    Files.writeString(result, whole);
    Files.writeString(ResultFiles.capture(result), "!");
    assertOneLine(
        amend("--note", "x"),
        1,
        result + ": not amended: broken seal: the capture beside it is not the one");
  }

  @Test
  void aResultOfAStrangerIsAmendedOnlyWhereItIsTrusted() throws Exception {
    Path own = folder.resolve("keys/own.pem");
    Path theirs = KeyStore.publicFile(key);
    key = own;
    assertOneLine(
        amend("--note", "x"),
        1,
        result
            + ": not amended: good seal by an unknown key ("
            + signer
            + "); name it with --trust");
    assertThat(own).doesNotExist();

    CommandRun run = amend("--note", "x", "--trust", theirs);
    assertThat(run.code()).as(run.err()).isZero();
    CommandRun both =
        CommandRun.of("verify", results, "--trust", theirs, "--trust", KeyStore.publicFile(own));
    assertThat(both.code()).as(both.out()).isZero();
    CommandRun one = CommandRun.of("verify", results, "--trust", theirs);
    assertThat(one.out()).contains(": a correction by an unknown key changes nothing (");
    assertThat(one.code()).isEqualTo(1);
  }

  /** The watch has read the head before the correction, and writes its result after it. */
  @Test
  void whileAWatchRuns() throws Exception {
    try (ProgramProcess watch =
        ProgramProcess.start(
            folder, "watch", "--port", "sim:sound,speed=5", "--results", results, "--key", key)) {
      watch.awaitOut(": rise ");
      try (ProgramProcess amend =
          ProgramProcess.start(folder, "amend", result, "--asset", "SP-014", "--key", key)) {
        assertThat(amend.awaitEnd()).as(amend.err()).isZero();
      }
      watch.awaitOut(": PASS ");
      assertThat(watch.awaitEnd()).as(watch.err()).isZero();
    }
    assertThat(verify(results))
        .contains(": asset unassigned -> SP-014\n", "4 documents and 3 captures in 1 chain");
    ObjectNode last = JsonGate.read(results.resolve("head.json"));
    assertThat(last.path("document").stringValue()).contains("_unassigned_pass_");
  }
}
