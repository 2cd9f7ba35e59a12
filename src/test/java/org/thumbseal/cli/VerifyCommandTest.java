package org.thumbseal.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.ByteArrayOutputStream;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.thumbseal.archive.Archive;
import org.thumbseal.json.ExampleDocument;
import org.thumbseal.json.JsonGate;
import org.thumbseal.json.SchemaDocument;
import org.thumbseal.seal.KeyStore;
import org.thumbseal.seal.OpenedKey;

/** The commands verify, key and schema as they are typed. */
class VerifyCommandTest {
  @TempDir private Path folder;
  private Path key;
  private Path results;
  private Path document;
  private OpenedKey opened;
  private String out = "";
  private String err = "";

  @BeforeEach
  void oneResult() throws Exception {
    key = folder.resolve("keys/k.pem");
    results = folder.resolve("results");
    opened = KeyStore.create(key);
    try (Archive archive = Archive.open(results, opened.key())) {
      document = archive.store(ExampleDocument.unsealed(1), new byte[] {'#'}).document();
    }
  }

  private int run(Object... args) {
    ByteArrayOutputStream outBytes = new ByteArrayOutputStream();
    ByteArrayOutputStream errBytes = new ByteArrayOutputStream();
    String[] texts = java.util.Arrays.stream(args).map(Object::toString).toArray(String[]::new);
    int code = Main.run(texts, new Streams(InputStream.nullInputStream(), outBytes, errBytes));
    out = outBytes.toString(StandardCharsets.UTF_8);
    err = errBytes.toString(StandardCharsets.UTF_8);
    return code;
  }

  @Test
  void aFileByATrustedKey() {
    assertThat(run("verify", "--key", key, document)).isZero();
    String who = opened.key().verifyingKey().fingerprint();
    assertThat(out).isEqualTo(document + ": good seal by a trusted key (" + who + ")\n");
    assertThat(err).isEmpty();
  }

  @Test
  void aDirectoryByATrustedKey() {
    assertThat(run("verify", results, "--trust", KeyStore.publicFile(key))).isZero();
    assertThat(out)
        .isEqualTo(
            results
                + ": 1 document and 1 capture in 1 chain checked: nothing missing,"
                + " all with a good seal by a trusted key\n  1 document by "
                + opened.key().verifyingKey().fingerprint()
                + ", 2026-03-02\n");
  }

  @Test
  void anUnknownKey() {
    assertThat(run("verify", "--key", folder.resolve("none.pem"), document)).isEqualTo(1);
    assertThat(out).contains("good seal by an unknown key");
  }

  @Test
  void aBrokenSealAndABrokenChain() throws Exception {
    Files.writeString(document, Files.readString(document).replace("88.41", "98.41"));
    assertThat(run("verify", "--key", key, document)).isEqualTo(1);
    assertThat(out).isEqualTo(document + ": broken seal: the content is not what was signed\n");

    Files.delete(document);
    assertThat(run("verify", "--key", key, results)).isEqualTo(1);
    assertThat(out)
        .isEqualTo(
            document.toString().replace(".json", ".log")
                + ": is a capture that no document here names\n"
                + results
                + ": broken chain: document 1 is missing: the end was cut off\n"
                + results
                + ": 0 documents and 0 captures in 1 chain checked: 1 broken chain\n  0 documents by "
                + opened.key().verifyingKey().kid()
                + "\n");
  }

  @Test
  void whatCannotBeReadIsExitCode2AndTheRestIsStillChecked() throws Exception {
    Path twice = Files.writeString(folder.resolve("twice.json"), "{\"a\":1,\"a\":2}");
    Path none = folder.resolve("none.json");

    assertThat(run("verify", "--key", key, twice, none, document)).isEqualTo(2);
    assertThat(out).contains("good seal by a trusted key", "3 documents checked");
    assertThat(err.lines())
        .containsExactly(
            "thumbseal: "
                + twice
                + ": is not JSON: line 1, column 11: Duplicate Object property \"a\"",
            "thumbseal: " + none + ": no such file");
  }

  @Test
  void anEmptyDirectoryHoldsNoResults() throws Exception {
    Path empty = Files.createDirectory(folder.resolve("empty"));

    assertThat(run("verify", "--key", key, empty)).isEqualTo(2);
    assertThat(err).isEqualTo("thumbseal: " + empty + ": holds no results\n");
    assertThat(out).isEmpty();
  }

  @Test
  void jsonForPrograms() throws Exception {
    assertThat(run("verify", "--json", "--key", key, results, folder.resolve("none"))).isEqualTo(2);
    List<String> lines = out.lines().toList();
    assertThat(lines).hasSize(3);
    var first = JsonGate.read(lines.get(0).getBytes(StandardCharsets.UTF_8));
    assertThat(first.path("file").stringValue()).isEqualTo(document.toString());
    assertThat(first.path("answer").stringValue()).isEqualTo("trusted-key");
    var second = JsonGate.read(lines.get(1).getBytes(StandardCharsets.UTF_8));
    assertThat(second.path("directory").stringValue()).isEqualTo(results.toString());
    assertThat(second.at("/chains/0/documents").longValue()).isEqualTo(1);
    assertThat(second.at("/chains/0/from").stringValue()).isEqualTo("2026-03-02T07:16:00Z");
    assertThat(lines.get(2)).contains("\"answer\":\"unreadable\"", "no such file");
  }

  @Test
  void namesOfFilesCannotSteerTheTerminal() throws Exception {
    Path evil = Files.copy(document, folder.resolve("a\u001b[2Jb.json"));

    assertThat(run("verify", "--key", key, evil)).isZero();
    assertThat(out).contains("a\\u001B[2Jb.json").doesNotContain("\u001b");
    assertThat(run("verify", "--json", "--key", key, evil)).isZero();
    assertThat(out).doesNotContain("\u001b");
    assertThat(JsonGate.read(out.getBytes(StandardCharsets.UTF_8)).path("file").stringValue())
        .isEqualTo(evil.toString());
  }

  /** A sound document may be that of another pump. */
  @Test
  void aNameThatIsNotItsOwnIsTold() throws Exception {
    String own = "2026/" + document.getFileName().toString().replace(".json", "");
    Path other = Files.move(document, document.resolveSibling("SP-7.json"));
    String remark = "bears another name than it was stored under, " + own;

    assertThat(run("verify", "--key", key, other)).isZero();
    assertThat(out).hasLineCount(1).endsWith("): " + remark + "\n");
    assertThat(run("verify", "--json", "--key", key, other)).isZero();
    var line = JsonGate.read(out.getBytes(StandardCharsets.UTF_8));
    assertThat(line.path("remark").stringValue()).isEqualTo(remark);
    Path outside = Files.move(other, folder.resolve("SP-7.json"));
    assertThat(run("verify", "--key", key, outside)).isZero();
    assertThat(out).doesNotContain("another name");
  }

  @Test
  void trustThatIsMissingIsExitCode2() {
    assertThat(run("verify", document, "--trust", folder.resolve("no.jwk"))).isEqualTo(2);
    assertThat(err).isEqualTo("thumbseal: " + folder.resolve("no.jwk") + ": no such file\n");
  }

  @Test
  void withoutAFileItSaysHow() {
    assertThat(run("verify")).isEqualTo(2);
    assertThat(err).contains("FILE|DIR").hasLineCount(1);
  }

  @Test
  void aKeyIsMadeOnceAndShown() throws Exception {
    Path fresh = folder.resolve("fresh/k.pem");
    assertThat(run("key", "new", "--key", fresh)).isZero();
    assertThat(out).contains(fresh.toString(), "thumbprint", "fingerprint");
    String secret = Files.readAllLines(fresh).get(1);

    assertThat(run("key", "new", "--key", fresh)).isEqualTo(2);
    assertThat(err).contains("never overwritten").hasLineCount(1);

    assertThat(run("key", "show", "--key", fresh)).isZero();
    assertThat(out).contains("\"crv\":\"Ed25519\"").doesNotContain(secret, "\"d\"");
    assertThat(run("key", "show", "--jwk", "--key", fresh)).isZero();
    assertThat(out).hasLineCount(1).startsWith("{");
    assertThat(run("key", "show", "--pem", "--key", fresh)).isZero();
    assertThat(out).startsWith("-----BEGIN PUBLIC KEY-----\n").doesNotContain(secret);
  }

  @Test
  void keyMistakesGetOneLine() throws Exception {
    assertThat(run("key")).isEqualTo(2);
    assertThat(err).contains("key new").hasLineCount(1);
    assertThat(run("key", "show", "--key", folder.resolve("none.pem"))).isEqualTo(2);
    assertThat(err).contains("no such key").hasLineCount(1);
    Path file = Files.writeString(folder.resolve("file"), "");
    assertThat(run("key", "new", "--key", file.resolve("sub/k.pem"))).isEqualTo(3);
    assertThat(err).hasLineCount(1);
  }

  @Test
  void schemasArePrinted() {
    assertThat(run("schema")).isZero();
    assertThat(out).isEqualTo(SchemaDocument.RESULT.text());
    assertThat(run("schema", "head")).isZero();
    assertThat(out).isEqualTo(SchemaDocument.HEAD.text());
    assertThat(run("schema", "tail")).isEqualTo(2);
    assertThat(err).contains("there is no schema 'tail'").hasLineCount(1);
  }
}
