package org.thumbseal.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.net.InetAddress;
import java.net.ServerSocket;
import java.net.SocketTimeoutException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import org.thumbseal.fuzz.Said;
import org.thumbseal.fuzz.SignedNasties;
import org.thumbseal.json.Canonical;
import tools.jackson.databind.node.ObjectNode;

/**
 * Every file of fixtures/hostile, by the command that reads its kind, against the line of the
 * README there that says what must happen.
 */
@Timeout(120)
class HostileFilesTest {
  private static final Path FOLDER = Path.of("fixtures", "hostile");
  private static final Path TRUSTED = FOLDER.resolve("documents/trusted.jwk");

  /** A row of the README: {@code | file | exit code | `words of the answer` | what it is |}. */
  private static final Pattern ROW =
      Pattern.compile("\\| `?([a-z]+/[^ |`]+)`? +\\| (\\d) \\| `(.*?)` +\\| .*\\|");

  record Expected(String file, int code, String says) {}

  static List<Expected> listed() throws IOException {
    return Files.readAllLines(FOLDER.resolve("README.md")).stream()
        .map(ROW::matcher)
        .filter(Matcher::matches)
        .map(m -> new Expected(m.group(1), Integer.parseInt(m.group(2)), m.group(3)))
        .toList();
  }

  @Test
  void everyFileIsListedAndEveryListedFileIsThere() throws IOException {
    try (Stream<Path> files = Files.walk(FOLDER)) {
      assertThat(
              files
                  .filter(Files::isRegularFile)
                  .map(f -> FOLDER.relativize(f).toString().replace('\\', '/'))
                  .filter(f -> !f.equals("README.md") && !f.equals("documents/trusted.jwk")))
          .containsExactlyInAnyOrderElementsOf(listed().stream().map(Expected::file).toList());
    }
  }

  @ParameterizedTest
  @MethodSource("listed")
  void answersAsTheReadmeSays(Expected expected) {
    CommandRun run = CommandRun.of(command(FOLDER.resolve(expected.file())));

    assertThat(run.out() + run.err()).contains(expected.says());
    assertThat(run.code()).isEqualTo(expected.code());
    Said.requirePlain(run.out() + run.err());
    Said.requireNoTrace(run.err());
  }

  private static Object[] command(Path file) {
    return switch (FOLDER.relativize(file).getName(0).toString()) {
      case "documents" -> new Object[] {"verify", "--trust", TRUSTED, file};
      case "captures" -> new Object[] {"replay", file};
      case "tables" -> new Object[] {"replay", "--columns", "time=1:s,pressure=2:kPa", file};
      case "criteria" -> new Object[] {"criteria", file};
      case "keys" ->
          new Object[] {"verify", "--trust", file, FOLDER.resolve("documents/signed-good.json")};
      default -> throw new AssertionError("no command reads " + file);
    };
  }

  @Test
  void signedOnesAreWhatTheirMakerMakes() throws Exception {
    Map<String, String> made = new TreeMap<>();
    SignedNasties.all("http://127.0.0.1:9/keys")
        .forEach(
            (name, document) -> made.put("signed-" + name + ".json", Canonical.text(document)));
    Map<String, String> found = new TreeMap<>();
    try (Stream<Path> files = Files.list(FOLDER.resolve("documents"))) {
      for (Path file :
          files.filter(f -> f.getFileName().toString().startsWith("signed-")).toList()) {
        found.put(file.getFileName().toString(), Files.readString(file));
      }
    }
    assertThat(found).isEqualTo(made);
  }

  /** A key that is named by an address is never fetched: nobody calls at that address. */
  @Test
  void nothingIsFetchedFromANetwork(@TempDir Path folder) throws Exception {
    try (ServerSocket server = new ServerSocket(0, 5, InetAddress.getLoopbackAddress())) {
      String address = "http://127.0.0.1:" + server.getLocalPort() + "/keys";
      for (Map.Entry<String, ObjectNode> each : SignedNasties.all(address).entrySet()) {
        Path file =
            Files.writeString(folder.resolve(each.getKey()), Canonical.text(each.getValue()));
        CommandRun.of("verify", "--trust", TRUSTED, file);
      }
      server.setSoTimeout(1);
      org.junit.jupiter.api.Assertions.assertThrows(SocketTimeoutException.class, server::accept);
    }
  }
}
