package org.thumbseal.cli;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assumptions.assumeThat;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.stream.Collectors;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.thumbseal.archive.LargeDirectory;
import org.thumbseal.json.JsonGate;
import org.thumbseal.seal.KeyStore;
import org.thumbseal.seal.OpenedKey;
import tools.jackson.databind.node.ObjectNode;

/** {@code verify} of a directory of some length, as it is typed. */
class VerifyDirectoryTest {
  private static final int DOCUMENTS = 40;

  @TempDir private Path folder;
  private Path results;
  private OpenedKey key;

  @BeforeEach
  void results() throws Exception {
    key = KeyStore.create(folder.resolve("keys/k.pem"));
    results = Files.createDirectory(folder.resolve("results"));
    LargeDirectory.write(results, DOCUMENTS, key.key());
  }

  private String signer() {
    return key.key().verifyingKey().fingerprint();
  }

  @Test
  void saysWhatItChecked() {
    CommandRun run = CommandRun.of("verify", "--key", key.file(), results);

    assertThat(run.code()).isZero();
    assertThat(run.err()).isEmpty();
    assertThat(run.out().lines())
        .containsExactly(
            results
                + ": 40 documents and 40 captures in 1 chain checked: nothing missing, all with a"
                + " good seal by a trusted key",
            "  40 documents by " + signer() + ", 2026-03-02");
  }

  @Test
  void saysWhatItCouldNotCheck() {
    CommandRun run = CommandRun.of("verify", "--key", folder.resolve("none"), results);

    assertThat(run.code()).isEqualTo(1);
    assertThat(run.out().lines().toList().get(DOCUMENTS + 2))
        .isEqualTo(
            "  40 documents by "
                + signer()
                + ", 2026-03-02; whose key that is was not checked,"
                + " nobody vouches for it here (--trust)");
  }

  /** Things beside the evidence are told and leave the exit code alone. */
  @Test
  void remarksAreNoFaults() throws Exception {
    Path stray = Files.writeString(results.resolve("2026/a\u001b[2J.log"), "");
    CommandRun run = CommandRun.of("verify", "--key", key.file(), results);

    assertThat(run.code()).isZero();
    assertThat(run.out())
        .contains("a\\u001B[2J.log: is a capture that no document here names")
        .contains("nothing missing");
    assertThat(lines(CommandRun.of("verify", "--json", "--key", key.file(), results)))
        .anySatisfy(
            line -> {
              assertThat(line.path("file").asString("")).isEqualTo(stray.toString());
              assertThat(line.path("answer").asString("")).isEqualTo("remark");
            });
  }

  @Test
  void jsonTellsTheDocumentsInTheOrderOfTheChain() throws Exception {
    List<ObjectNode> lines = lines(CommandRun.of("verify", "--json", "--key", key.file(), results));

    assertThat(lines).hasSize(DOCUMENTS + 1);
    assertThat(lines.subList(0, DOCUMENTS))
        .extracting(line -> line.path("file").asString(""))
        .isSorted();
    ObjectNode summary = lines.get(DOCUMENTS);
    assertThat(summary.path("documents").intValue()).isEqualTo(DOCUMENTS);
    assertThat(summary.at("/chains/0/key").stringValue()).isEqualTo("trusted-key");
    assertThat(summary.at("/chains/0/signer").stringValue()).isEqualTo(signer());
  }

  private static List<ObjectNode> lines(CommandRun run) throws Exception {
    List<ObjectNode> lines = new java.util.ArrayList<>();
    for (String line : run.out().lines().toList()) {
      lines.add(JsonGate.read(line.getBytes(StandardCharsets.UTF_8)));
    }
    return lines;
  }

  /** The program on a terminal of its own, as {@code script} makes one. */
  @Test
  void theBarIsForTerminals() throws Exception {
    assumeThat(run(List.of("script", "--version"))).as("script").contains("script");
    String verify =
        ProgramProcess.command("verify", "--key", key.file(), results).stream()
            .map(word -> "'" + word + "'")
            .collect(Collectors.joining(" "));

    String seen = run(List.of("script", "-qec", verify, "/dev/null"));
    assertThat(seen).contains("\r[", " of 40").contains("nothing missing");
    assertThat(seen.substring(0, seen.indexOf(results + ":"))).endsWith(" \r");
    assertThat(run(List.of("script", "-qec", verify + " --json", "/dev/null")))
        .doesNotContain(" of 40");
    assertThat(run(List.of("script", "-qec", verify + " 2>/dev/null", "/dev/null")))
        .contains("nothing missing")
        .doesNotContain(" of 40");
  }

  private static String run(List<String> command) throws Exception {
    try {
      Process process = new ProcessBuilder(command).redirectErrorStream(true).start();
      process.getOutputStream().close();
      String said = new String(process.getInputStream().readAllBytes(), StandardCharsets.UTF_8);
      process.waitFor();
      return said;
    } catch (IOException e) {
      return "";
    }
  }
}
