package org.thumbseal.archive;

import static org.assertj.core.api.Assertions.assertThat;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.regex.Pattern;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.thumbseal.archive.OtherHand.Run;
import org.thumbseal.json.ExampleDocument;
import org.thumbseal.seal.SigningKey;

/** The published shell script against documents as they are stored; openssl is the other hand. */
class OpensslTest {
  private static final Path SCRIPT = Path.of(OtherHand.OPENSSL.script());
  private static final SigningKey KEY = SigningKey.generate();

  @TempDir private Path folder;
  private Path key;
  private Path document;

  @BeforeEach
  void oneResult() throws Exception {
    assumeTrue(OtherHand.OPENSSL.isHere(), OtherHand.OPENSSL.absence());
    key = Files.writeString(folder.resolve("key.pem"), KEY.verifyingKey().pem());
    try (Archive archive = Archive.open(folder.resolve("results"), KEY)) {
      archive.store(ExampleDocument.unsealed(1), new byte[] {'#'});
      document = archive.store(ExampleDocument.unsealed(2), new byte[] {'#'}).document();
    }
  }

  @Test
  void aStoredResultVerifies() throws Exception {
    assertThat(verify(document, key))
        .isEqualTo(
            new Run(
                0,
                document
                    + ": good seal by the key "
                    + KEY.verifyingKey().kid()
                    + "; the capture is the one that was graded\n"));
  }

  @Test
  void theHeadVerifiesToo() throws Exception {
    assertThat(verify(folder.resolve("results/head.json"), key).code()).isZero();
  }

  @ParameterizedTest
  @CsvSource({
    "pass, fail, 1",
    "88.41, 88.42, 1",
    "SP-014, SP-015, 1",
    "ü, u, 1",
    "'{\"asset\"', '{ \"asset\"', 1",
    "'\"sequence\":2', '\"sequence\":3', 1",
    "'\"signature\":', '\"signed\":', 2",
    "'\"kind\"', '\"a\":{\"b\":1,\"signature\":\"x..y\"},\"kind\"', 2",
    "'\"kind\"', '\n\"kind\"', 2"
  })
  void aTamperedOneDoesNot(String from, String to, int code) throws Exception {
    String text = Files.readString(document);
    String changed = text.replaceFirst(Pattern.quote(from), to);
    assertThat(changed).isNotEqualTo(text);
    Files.writeString(document, changed);

    assertThat(verify(document, key).code()).isEqualTo(code);
  }

  @Test
  void anotherKeyIsSaid() throws Exception {
    Path other =
        Files.writeString(folder.resolve("other.pem"), SigningKey.generate().verifyingKey().pem());

    assertThat(verify(document, other))
        .isEqualTo(
            new Run(1, document + ": broken seal: sealed with another key, or not with EdDSA\n"));
  }

  @Test
  void theDocumentShowsTheSameScript() throws IOException {
    assertThat(Files.readString(Path.of("src/docs/result-format.md")))
        .contains("```sh\n" + Files.readString(SCRIPT) + "```\n");
  }

  private static Run verify(Path document, Path key) throws Exception {
    return OtherHand.OPENSSL.verify(document, key);
  }
}
