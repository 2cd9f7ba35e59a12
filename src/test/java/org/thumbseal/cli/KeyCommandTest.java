package org.thumbseal.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.ByteArrayOutputStream;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.PosixFilePermissions;
import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Deque;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.condition.DisabledOnOs;
import org.junit.jupiter.api.condition.OS;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import org.thumbseal.json.Canonical;
import org.thumbseal.json.JsonGate;
import org.thumbseal.seal.KeyStore;
import org.thumbseal.seal.SigningKey;
import tools.jackson.databind.node.ObjectNode;

/** The command key as it is typed, with and without a person at a terminal. */
class KeyCommandTest {
  @TempDir private Path folder;
  private Path key;
  private String out = "";
  private String err = "";

  /** Says what is written here, and keeps the questions. */
  private static final class Person implements Terminal {
    private final Deque<String> answers;
    private final List<String> questions = new ArrayList<>();

    Person(String... answers) {
      this.answers = new ArrayDeque<>(List.of(answers));
    }

    @Override
    public Optional<String> line(String question) {
      questions.add(question);
      return Optional.ofNullable(answers.poll());
    }

    @Override
    public Optional<char[]> secret(String question) {
      return line(question).map(String::toCharArray);
    }
  }

  @BeforeEach
  void aKey() throws Exception {
    key = folder.resolve("keys/k.pem");
    KeyStore.create(key);
  }

  private int run(Object... args) {
    return run(Optional.empty(), args);
  }

  private int asked(Person person, Object... args) {
    return run(Optional.of(person), args);
  }

  private int run(Optional<Terminal> terminal, Object... args) {
    ByteArrayOutputStream outBytes = new ByteArrayOutputStream();
    ByteArrayOutputStream errBytes = new ByteArrayOutputStream();
    String[] texts = Arrays.stream(args).map(Object::toString).toArray(String[]::new);
    InputStream in = InputStream.nullInputStream();
    int code = Main.run(texts, new Streams(in, outBytes, errBytes, terminal));
    out = outBytes.toString(StandardCharsets.UTF_8);
    err = errBytes.toString(StandardCharsets.UTF_8);
    return code;
  }

  private Path passphraseFile(String text) throws Exception {
    Path file = Files.writeString(folder.resolve("keys/pass"), text);
    if (!System.getProperty("os.name").startsWith("Windows")) {
      Files.setPosixFilePermissions(file, PosixFilePermissions.fromString("rw-------"));
    }
    return file;
  }

  private Path friend() throws Exception {
    ObjectNode jwk = SigningKey.generate().verifyingKey().jwk();
    return Files.writeString(folder.resolve("friend.jwk"), Canonical.text(jwk));
  }

  private List<Path> trustFiles() throws Exception {
    Path trusted = folder.resolve("keys/trusted");
    return Files.isDirectory(trusted) ? new ResultFiles(trusted).files("") : List.of();
  }

  @Test
  void aFriendIsTrusted() throws Exception {
    int code =
        run(
            "key",
            "trust",
            friend(),
            "--name",
            "Night shift",
            "--from",
            "2026-01-01",
            "--until",
            "2026-12-31T12:00:00Z",
            "--key",
            key);

    assertThat(code).as(err).isZero();
    assertThat(out)
        .contains(
            "fingerprint  ", "trusted      Night shift from 2026-01-01 until 2026-12-31T12:00");
    assertThat(err).isEqualTo("thumbseal: compare the fingerprint with its owner on the phone\n");
    assertThat(run("key", "trusted", "--key", key)).isZero();
    assertThat(out.lines()).hasSize(2).anyMatch(line -> line.contains("  Night shift from 2026"));
  }

  @Test
  void aPersonIsAskedBeforeAKeyIsTrusted() throws Exception {
    for (String no : List.of("", "no", "y")) {
      Person person = new Person(no);
      assertThat(asked(person, "key", "trust", friend(), "--name", "A", "--key", key)).isEqualTo(2);
      assertThat(person.questions).singleElement().asString().contains("same fingerprint");
      assertThat(err).contains("nothing was changed").hasLineCount(1);
      assertThat(trustFiles()).isEmpty();
    }
    assertThat(asked(new Person("yes"), "key", "trust", friend(), "--name", "A", "--key", key))
        .isZero();
    assertThat(err).isEmpty();
  }

  @Test
  void aKeyIsTrustedUnderOneName() throws Exception {
    Path friend = friend();
    run("key", "trust", friend, "--name", "Night shift", "--key", key);

    assertThat(run("key", "trust", friend, "--name", "Day shift", "--key", key)).isEqualTo(2);
    assertThat(err).contains("trusted already, as Night shift").hasLineCount(1);
    assertThat(trustFiles().stream().filter(Files::isRegularFile)).hasSize(1);
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      textBlock =
          """
          --name A --from soon                            | "validFrom" is no date such as
          --name A --until 2026-02-30                     | "validUntil" is no date such as
          --name A --from 2026-03-02 --until 2026-03-01   | "validUntil" is before "validFrom"
          """)
  void wrongDatesAreSaid(String options, String message) throws Exception {
    List<Object> args = new ArrayList<>(List.of("key", "trust", friend(), "--key", key));
    args.addAll(List.of(options.split(" ")));

    assertThat(run(args.toArray())).isEqualTo(2);
    assertThat(err).contains(message).hasLineCount(1);
    assertThat(trustFiles()).isEmpty();
  }

  @ParameterizedTest
  @ValueSource(strings = {"", " ", "a\u001b[2J", "a\nb", "\u202eanna", "a\u200b"})
  void namesThatCannotBeShownAreRefused(String name) throws Exception {
    assertThat(run("key", "trust", friend(), "--name", name, "--key", key)).isEqualTo(2);
    assertThat(err).contains("--name must be 1 to 100 plain characters").hasLineCount(1);
    assertThat(run("key", "renew", "--name", name, "--key", key)).isEqualTo(2);
    assertThat(trustFiles()).isEmpty();
  }

  /** Whatever a name is, its file lies in the folder, and is no device of another system. */
  @ParameterizedTest
  @ValueSource(strings = {"../../x", "CON", "a/b", "<script>", ".hidden", "日本", "NUL.txt"})
  void namesAreNoPaths(String name) throws Exception {
    assertThat(run("key", "trust", friend(), "--name", name, "--key", key)).as(err).isZero();

    List<Path> files = trustFiles().stream().filter(Files::isRegularFile).toList();
    assertThat(files).hasSize(1);
    assertThat(files.get(0).getFileName().toString())
        .matches("([a-z0-9-]+-)?[0-9a-f]{4}-[0-9a-f]{4}\\.jwk");
    assertThat(JsonGate.read(files.get(0)).path("name").stringValue()).isEqualTo(name);
    assertThat(run("key", "trusted", "--key", key)).isZero();
    assertThat(out).contains("  " + name);
  }

  @Test
  void aPrivateKeyIsNotTrusted() throws Exception {
    ObjectNode jwk = SigningKey.generate().verifyingKey().jwk().put("d", "A".repeat(43));
    Path secret = Files.writeString(folder.resolve("secret.jwk"), Canonical.text(jwk));

    assertThat(run("key", "trust", secret, "--name", "A", "--key", key)).isEqualTo(2);
    assertThat(err).contains("holds a private key").doesNotContain("AAAA").hasLineCount(1);
    assertThat(run("key", "trust", key, "--name", "A", "--key", key)).isEqualTo(2);
    assertThat(err).isEqualTo("thumbseal: " + key + ": is not JSON: line 1, column 2\n");
  }

  @Test
  void aNewKeyGoesWhereAPersonSays() {
    Path there = folder.resolve("elsewhere/mine.pem");
    Person person = new Person(there.toString());
    assertThat(System.getenv()).doesNotContainKey("THUMBSEAL_KEY");

    assertThat(asked(person, "key", "new")).as(err).isZero();
    assertThat(person.questions)
        .singleElement()
        .asString()
        .contains("[" + KeyStore.defaultFile(System.getenv()) + "]");
    assertThat(there).exists();
    assertThat(asked(new Person(there.toString()), "key", "new")).isEqualTo(2);
    assertThat(err).contains("never overwritten").hasLineCount(1);
    assertThat(asked(new Person(), "key", "new")).isEqualTo(2);
    assertThat(err).contains("no key made").hasLineCount(1);
  }

  @Test
  void nobodyIsAskedWhereItIsSaid() {
    Person person = new Person();

    assertThat(asked(person, "key", "new", "--key", folder.resolve("keys/other.pem"))).isZero();
    assertThat(person.questions).isEmpty();
  }

  @Test
  void aPassphraseIsTypedTwice() {
    Path hidden = folder.resolve("keys/hidden.pem");
    Object[] make = {"key", "new", "--passphrase", "--key", hidden};

    assertThat(run(make)).isEqualTo(2);
    assertThat(err).contains("--passphrase-file", "THUMBSEAL_PASSPHRASE_FILE").hasLineCount(1);
    assertThat(asked(new Person("tall trees", "tall tree"), make)).isEqualTo(2);
    assertThat(err).contains("differ").hasLineCount(1).doesNotContain("tall");
    assertThat(asked(new Person("short", "short"), make)).isEqualTo(2);
    assertThat(err).contains("too short").hasLineCount(1);
    assertThat(asked(new Person("tall trees"), make)).isEqualTo(2);
    assertThat(hidden).doesNotExist();
    Person person = new Person("tall trees", "tall trees");
    assertThat(asked(person, make)).as(err).isZero();
    assertThat(person.questions).hasSize(2);
    assertThat(out + err).doesNotContain("tall");
  }

  @Test
  void anEncryptedKeyIsShownWithoutOpeningIt() throws Exception {
    Path hidden = folder.resolve("keys/hidden.pem");
    Path pass = passphraseFile("tall trees\n");
    assertThat(run("key", "new", "--passphrase-file", pass, "--key", hidden)).as(err).isZero();
    String made = out.lines().filter(line -> line.startsWith("fingerprint")).findFirst().get();
    Person person = new Person();

    assertThat(asked(person, "key", "show", "--key", hidden)).isZero();
    assertThat(person.questions).isEmpty();
    assertThat(out).contains(made, "(encrypted; shown is the public key beside it)");
    assertThat(run("key", "show", "--key", hidden, "--passphrase-file", pass)).isZero();
    assertThat(out).contains(made).doesNotContain("encrypted");

    Files.copy(
        KeyStore.publicFile(key),
        KeyStore.publicFile(hidden),
        java.nio.file.StandardCopyOption.REPLACE_EXISTING);
    assertThat(run("key", "show", "--key", hidden)).isZero();
    assertThat(err).isEmpty();
    assertThat(run("key", "show", "--key", hidden, "--passphrase-file", pass)).isEqualTo(1);
    assertThat(out).contains(made);
    assertThat(err).contains("hidden.jwk: is not the public half of this key").hasLineCount(1);

    Files.delete(KeyStore.publicFile(hidden));
    assertThat(run("key", "show", "--key", hidden)).isEqualTo(2);
    assertThat(err).contains("is encrypted; name the file").hasLineCount(1);
    assertThat(asked(new Person("tall trees"), "key", "show", "--key", hidden)).isZero();
    assertThat(out).contains(made);
    assertThat(asked(new Person("tall tree"), "key", "show", "--key", hidden)).isEqualTo(2);
    assertThat(err).contains("the passphrase is wrong").doesNotContain("tall").hasLineCount(1);
  }

  /** Every command that seals: replay, calibrate; watch has its terminal in a test of its own. */
  @Test
  void sealingWithAnEncryptedKey() throws Exception {
    Path hidden = folder.resolve("keys/hidden.pem");
    Path pass = passphraseFile("tall trees\n");
    Path results = folder.resolve("results");
    Path capture = folder.resolve("sound.log");
    run("simulate", "sound", "--rate", "20", "--out", capture);
    Object[] replay = {"replay", capture, "--results", results, "--key", hidden};
    Object[] withFile = Arrays.copyOf(replay, replay.length + 2);
    withFile[replay.length] = "--passphrase-file";
    withFile[replay.length + 1] = pass;

    assertThat(run(withFile)).as(err).isZero();
    assertThat(KeyStore.isEncrypted(hidden)).isTrue();
    assertThat(run(replay)).isEqualTo(2);
    assertThat(err).contains("is encrypted; name the file").hasLineCount(1);
    int calibrated =
        run(
            "calibrate",
            "--sensor",
            "a",
            "--pair",
            "0=0",
            "80=81",
            "--reference",
            "R",
            "--certificate",
            "C",
            "--reference-uncertainty",
            "2 mmHg",
            "--results",
            results,
            "--key",
            hidden,
            "--passphrase-file",
            pass);
    assertThat(calibrated).as(err).isZero();
    assertThat(run("verify", results, "--key", hidden)).isZero();
    Files.writeString(pass, "tall tree\n");
    assertThat(run(withFile)).isEqualTo(2);
    assertThat(err).contains("the passphrase is wrong").doesNotContain("tall").hasLineCount(1);
  }

  /** From the first result to the check of both chains, as a person would do it. */
  @Test
  void aKeyIsRenewedAndBothChainsVerify() throws Exception {
    Path results = folder.resolve("results");
    simulateAndReplay(results, 1);
    simulateAndReplay(results, 2);
    assertThat(run("verify", results, "--key", key)).isZero();
    String oldPrint = fingerprint();

    assertThat(run("key", "renew", "--name", "Ward 3", "--key", key)).as(err).isZero();
    assertThat(out).contains("old key      ", "trusted by   ").doesNotContain(oldPrint);
    assertThat(run("verify", results, "--key", key)).as(out).isZero();
    simulateAndReplay(results, 3);
    assertThat(run("verify", results, "--key", key)).as(out).isZero();
    assertThat(out).contains("3 documents and 3 captures in 2 chains checked: nothing missing");

    List<Path> old =
        new ResultFiles(results)
            .documents().stream()
                .filter(d -> read(d).at("/ledger/continues").isMissingNode())
                .toList();
    assertThat(old).hasSize(2);
    assertThat(run("verify", old.get(0), "--key", key)).isZero();
    assertThat(out).contains("good seal by a trusted key (Ward 3)");

    Path last =
        old.stream().filter(d -> read(d).at("/ledger/sequence").intValue() == 2).findAny().get();
    Files.delete(last);
    assertThat(run("verify", results, "--key", key)).isEqualTo(1);
    assertThat(out).contains("document 2 is missing: the end was cut off", "continues document 2");
  }

  private void simulateAndReplay(Path results, int seed) {
    Path capture = folder.resolve("s" + seed + ".log");
    run("simulate", "sound", "--rate", "20", "--seed", seed, "--out", capture);
    assertThat(run("replay", capture, "--results", results, "--key", key)).as(err).isZero();
  }

  private String fingerprint() {
    run("key", "show", "--key", key);
    return out.lines().filter(line -> line.startsWith("fingerprint")).findFirst().orElseThrow();
  }

  private static ObjectNode read(Path document) {
    try {
      return JsonGate.read(document);
    } catch (org.thumbseal.json.JsonRefusedException e) {
      throw new AssertionError(e);
    }
  }

  /** The remark of the directory is that of the file: whose key, and of which time. */
  @Test
  void documentsOutsideTheTimeOfTheirKeyAreSaid() throws Exception {
    Path results = folder.resolve("results");
    simulateAndReplay(results, 1);
    Path jwk = KeyStore.publicFile(key);
    ObjectNode entry = JsonGate.read(jwk).put("name", "Ward 3").put("validUntil", "1999-12-31");
    Path trust = Files.writeString(folder.resolve("old.jwk"), Canonical.text(entry));

    assertThat(run("verify", results, "--trust", trust)).isEqualTo(1);
    assertThat(out)
        .contains("good seal by an unknown key (")
        .contains(": it is of 20", ", and the key of Ward 3 is trusted until 1999-12-31 only");
    Path document = new ResultFiles(results).documents().get(0);
    assertThat(run("verify", document, "--trust", trust)).isEqualTo(1);
    assertThat(out).contains("the key of Ward 3 is trusted until 1999-12-31 only");
  }

  @Test
  @DisabledOnOs(OS.WINDOWS)
  void aKeyThatIsOpenToOthersIsNeitherRenewedNorShown() throws Exception {
    Files.setPosixFilePermissions(key, PosixFilePermissions.fromString("rw-r--r--"));
    for (String command : List.of("show", "renew")) {
      assertThat(run("key", command, "--key", key)).isEqualTo(2);
      assertThat(err).contains("chmod 600").hasLineCount(1);
    }
    Files.setPosixFilePermissions(key, PosixFilePermissions.fromString("rw-------"));
    Files.setPosixFilePermissions(
        folder.resolve("keys"), PosixFilePermissions.fromString("rwxr-xr-x"));
    for (String command : List.of("show", "renew")) {
      assertThat(run("key", command, "--key", key)).isEqualTo(2);
      assertThat(err).contains("chmod 700").hasLineCount(1);
    }
  }
}
