package org.thumbseal.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.condition.EnabledOnOs;
import org.junit.jupiter.api.condition.OS;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import org.thumbseal.fuzz.Said;
import org.thumbseal.seal.KeyStore;

/** Names that would be a path, a device, or an order to the terminal. */
@Timeout(300)
class HostileNamesTest {
  /** Obeyed by a terminal, or turning the order in which it is read. */
  private static final String ORDERS = "\u001b[2J\u009b31m\u202e\u2066\u200f\u007f";

  /** Names no file can have on Windows, whatever the extension (common knowledge, from memory). */
  private static final String DEVICE = "(?i)(con|prn|aux|nul|com[0-9]|lpt[0-9])(\\..*)?";

  @TempDir private static Path folder;
  private static Path capture;
  private static Path key;

  @BeforeAll
  static void record() throws Exception {
    key = folder.resolve("keys/k.pem");
    KeyStore.create(key);
    capture = folder.resolve("sound.log");
    CommandRun.of("simulate", "sound", "--rate", "20", "--jar-l", "0.3", "--out", capture);
  }

  static Stream<String> kept() {
    return Stream.of(
        "../../x",
        "CON",
        "NUL.txt",
        "a/b",
        "C:\\x",
        "...",
        "..",
        "x. ",
        "@x",
        "~root",
        "-rf",
        "$(x)",
        "\u202egnp.exe",
        "\u200f\u05d0",
        "\ud83e\ude7a",
        "<script>alert(1)</script>",
        "=1+1",
        "x".repeat(100));
  }

  /** Kept in the document as it was given; in file names only what is safe everywhere. */
  @ParameterizedTest
  @MethodSource("kept")
  void anAssetStaysInsideTheDirectory(String asset) throws Exception {
    Path around = Files.createTempDirectory(folder, "around");
    Path results = around.resolve("deep/results");

    Answer answer =
        Answer.to(
            "replay", "--asset=" + asset, "--results", results, "--key", key, "--json", capture);

    assertThat(answer.code()).as(answer.err()).isIn(0, 1);
    assertThat(answer.onlyDocument().at("/asset/id").stringValue()).isEqualTo(asset.strip());
    assertThat(files(around)).hasSizeBetween(3, 4).allSatisfy(f -> assertSafe(results, f));
    Said.requirePlain(answer.out() + answer.err());
    CommandRun verified = CommandRun.of("verify", "--key", key, results);
    assertThat(verified.code()).as(verified.out() + verified.err()).isZero();
  }

  private static void assertSafe(Path results, Path file) {
    assertThat(file).startsWithRaw(results);
    assertThat(file.getFileName().toString())
        .matches("\\.lock|head\\.json|[A-Za-z0-9][A-Za-z0-9._-]*[A-Za-z0-9]")
        .doesNotMatch(DEVICE)
        .hasSizeLessThan(120);
  }

  private static List<Path> files(Path around) throws IOException {
    try (Stream<Path> all = Files.walk(around)) {
      return all.filter(Files::isRegularFile).toList();
    }
  }

  static Stream<String> refused() {
    return Stream.of(
        "",
        " ",
        "a\0b",
        "a\nb",
        "\u001b[2J",
        "a\u0085b",
        "x".repeat(101),
        "x".repeat(300),
        "\ud800");
  }

  @ParameterizedTest
  @MethodSource("refused")
  void anAssetThatIsNoNameIsRefused(String asset) {
    CommandRun run = CommandRun.of("replay", "--asset=" + asset, capture);

    assertThat(run.err()).isEqualTo("thumbseal: --asset must be 1 to 100 plain characters\n");
    assertThat(run.code()).isEqualTo(2);
  }

  /** Everything a header can hold, through every command that shows it. */
  @Test
  @EnabledOnOs(OS.LINUX)
  void aCaptureGivesTheTerminalNoOrders() throws Exception {
    Path hostile = folder.resolve("x" + ORDERS + ".log");
    String orders = ORDERS.replace("\u001b", "\u001b");
    Files.writeString(
        hostile,
        Files.readString(capture)
            .replaceFirst(
                "\n# source .*\n",
                "\n# source " + orders + "\n# asset " + orders + "\n# note " + orders + "\n"));
    Path results = folder.resolve("results" + ORDERS);

    requirePlain(CommandRun.of("replay", hostile));
    requirePlain(CommandRun.of("replay", "--explain", hostile));
    requirePlain(CommandRun.of("replay", "--json", hostile));
    requirePlain(CommandRun.of("replay", "--results", results, "--key", key, hostile));
    requirePlain(CommandRun.of("replay", "--results", results, "--key", key, hostile));
    requirePlain(CommandRun.of("verify", "--key", key, results));
    requirePlain(CommandRun.of("verify", "--key", key, "--json", results));
    Path document = new ResultFiles(results).documents().get(0);
    requirePlain(CommandRun.of("verify", "--key", key, document));
    requirePlain(CommandRun.of("verify", "--key", key, "--json", document));
    requirePlain(CommandRun.of("replay", "--against", document, "--asset", "other", hostile));
    requirePlain(CommandRun.of("verify", "--key", key, hostile));
  }

  /** Names on the command line that come back in a message. */
  @Test
  @EnabledOnOs(OS.LINUX)
  void aMessageGivesTheTerminalNoOrders() {
    String name = folder.resolve("none" + ORDERS).toString();
    for (String line :
        List.of(
            "replay @",
            "verify @",
            "verify --json @",
            "verify --trust @ x",
            "criteria @",
            "@",
            "--@",
            "replay --criteria @ x",
            "replay --against @ x",
            "replay --columns @ x",
            "key show --key @",
            "key new --key @/k.pem",
            "ports @",
            "ports tcp:@",
            "ports file:@",
            "ports sim:@",
            "schema @",
            "simulate @",
            "simulate sound --out @/x",
            "simulate sound --seed @",
            "replay --jar-l @ x",
            "replay --results @ --key @ x",
            "watch --port @ --results @ --key @",
            "calibrate --reference @ --port @",
            "accuracy --captures @",
            "accuracy @")) {
      CommandRun run =
          CommandRun.of(Stream.of(line.split(" ")).map(part -> part.replace("@", name)).toArray());
      assertThat(run.code()).as(line).isIn(0, 1, 2, 3);
      requirePlain(run);
    }
  }

  /** Links that somebody planted where the program writes: none is written through. */
  @Test
  @EnabledOnOs(OS.LINUX)
  void linksInTheResultDirectoryAreNotWrittenThrough() throws Exception {
    Path victim = Files.writeString(folder.resolve("victim"), "precious");
    for (String planted : List.of(".lock", ".head.json.tmp", "head.json")) {
      Path results = Files.createDirectories(folder.resolve("planted" + planted));
      Files.createSymbolicLink(results.resolve(planted), victim);

      CommandRun run = CommandRun.of("replay", "--results", results, "--key", key, capture);

      assertThat(victim).as(planted).hasContent("precious");
      Said.requireNoTrace(run.err());
    }
  }

  /** What has the name of a temporary file behind a linked folder belongs to somebody else. */
  @Test
  @EnabledOnOs(OS.LINUX)
  void filesBehindALinkedFolderAreNotRemoved() throws Exception {
    Path elsewhere = Files.createDirectories(folder.resolve("elsewhere"));
    Path theirs = Files.writeString(elsewhere.resolve(".draft.json.tmp"), "precious");
    Path results = Files.createDirectories(folder.resolve("linked"));
    Files.createSymbolicLink(results.resolve("2025"), elsewhere);

    CommandRun run = CommandRun.of("replay", "--results", results, "--key", key, capture);

    assertThat(run.code()).as(run.err()).isIn(0, 1);
    assertThat(theirs).hasContent("precious");
  }

  private static void requirePlain(CommandRun run) {
    Said.requirePlain(run.out() + run.err());
    Said.requireNoTrace(run.err());
  }
}
