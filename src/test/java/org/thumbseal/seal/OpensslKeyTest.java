package org.thumbseal.seal;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Key files between this program and openssl, in both directions. */
class OpensslKeyTest {
  @TempDir private Path folder;
  private Path passphrase;

  private record Run(int code, String output) {}

  @BeforeEach
  void openssl() throws Exception {
    assumeTrue(
        run("openssl", "version").output().matches("(?s)OpenSSL ([3-9]|\\d\\d).*"),
        "no openssl 3 here: key files are not checked by other hands");
    OwnerOnly.createFolder(folder.resolve("keys"));
    passphrase = folder.resolve("keys/pass");
    Files.writeString(passphrase, "schöne Grüße, 7 €\n");
    Files.setPosixFilePermissions(
        passphrase, java.nio.file.attribute.PosixFilePermissions.fromString("rw-------"));
  }

  private record FromFile(Path file) implements Passphrases {
    @Override
    public Passphrase of(Path keyFile) throws KeyException {
      return Passphrase.read(file);
    }

    @Override
    public Optional<Passphrase> forNewKey() throws KeyException {
      return Optional.of(Passphrase.read(file));
    }
  }

  private static Run run(Object... command) throws Exception {
    try {
      List<String> words = Arrays.stream(command).map(Object::toString).toList();
      Process process = new ProcessBuilder(words).redirectErrorStream(true).start();
      process.getOutputStream().close();
      String output = new String(process.getInputStream().readAllBytes(), StandardCharsets.UTF_8);
      return new Run(process.waitFor(), output);
    } catch (IOException e) {
      return new Run(-1, String.valueOf(e.getMessage()));
    }
  }

  @Test
  void opensslReadsOurKeys() throws Exception {
    Path plain = folder.resolve("keys/plain.pem");
    String plainPublic = KeyStore.create(plain).key().verifyingKey().pem();
    assertThat(run("openssl", "pkey", "-in", plain, "-pubout")).isEqualTo(new Run(0, plainPublic));

    Path hidden = folder.resolve("keys/hidden.pem");
    String hiddenPublic =
        KeyStore.create(hidden, new FromFile(passphrase)).key().verifyingKey().pem();
    assertThat(run("openssl", "pkey", "-in", hidden, "-passin", "file:" + passphrase, "-pubout"))
        .isEqualTo(new Run(0, hiddenPublic));
    assertThat(run("openssl", "pkey", "-in", hidden, "-passin", "pass:wrong").code()).isNotZero();
  }

  /**
   * What it is encrypted with, as openssl itself tells it: RFC 8018, and OWASP's 600 000 rounds.
   */
  @Test
  void opensslSeesTheAlgorithmsThatWereAskedFor() throws Exception {
    Path hidden = folder.resolve("keys/hidden.pem");
    KeyStore.create(hidden, new FromFile(passphrase));

    assertThat(run("openssl", "asn1parse", "-in", hidden).output())
        .contains(":PBES2", ":PBKDF2", ":hmacWithSHA256", ":aes-256-cbc")
        .contains(
            "INTEGER           :0"
                + Integer.toHexString(600_000).toUpperCase(java.util.Locale.ROOT));
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "-v2 aes-256-cbc -v2prf hmacWithSHA256",
        "-v2 aes-256-cbc -v2prf hmacWithSHA256 -iter 10000",
        "-v2 aes-128-cbc -v2prf hmacWithSHA512"
      })
  void weReadOpensslsKeys(String options) throws Exception {
    Path plain = folder.resolve("keys/plain.pem");
    assertThat(run("openssl", "genpkey", "-algorithm", "ed25519", "-out", plain).code()).isZero();
    Path hidden = encrypt(plain, options);

    assertThat(KeyStore.load(hidden, new FromFile(passphrase)).key().verifyingKey().pem())
        .isEqualTo(run("openssl", "pkey", "-in", plain, "-pubout").output());
    assertThat(KeyStore.load(plain).key().verifyingKey())
        .isEqualTo(KeyStore.load(hidden, new FromFile(passphrase)).key().verifyingKey());
  }

  @ParameterizedTest
  @ValueSource(strings = {"-v2 des3", "-v2 aes-192-cbc", "-scrypt", "-v1 PBE-SHA1-3DES"})
  void otherWaysToEncryptAreSaid(String options) throws Exception {
    Path plain = folder.resolve("keys/plain.pem");
    run("openssl", "genpkey", "-algorithm", "ed25519", "-out", plain);
    Path hidden = encrypt(plain, options);

    assertThatThrownBy(() -> KeyStore.load(hidden, new FromFile(passphrase)))
        .isInstanceOf(KeyException.class)
        .hasMessageContaining("encrypt it anew with: openssl pkcs8 -topk8 -v2 aes-256-cbc");
  }

  @Test
  void anEncryptedKeyOfAnotherKindIsSaid() throws Exception {
    Path plain = folder.resolve("keys/rsa.pem");
    run("openssl", "genpkey", "-algorithm", "X25519", "-out", plain);
    Path hidden = encrypt(plain, "-v2 aes-256-cbc");

    assertThatThrownBy(() -> KeyStore.load(hidden, new FromFile(passphrase)))
        .hasMessageEndingWith("the passphrase is wrong, or it is not an Ed25519 private key");
  }

  private Path encrypt(Path plain, String options) throws Exception {
    Path hidden = plain.resolveSibling("hidden.pem");
    Object[] fixed = {"openssl", "pkcs8", "-topk8", "-in", plain, "-out", hidden};
    Object[] rest = {"-passout", "file:" + passphrase};
    Object[] all = Arrays.copyOf(fixed, fixed.length + options.split(" ").length + rest.length);
    System.arraycopy(options.split(" "), 0, all, fixed.length, options.split(" ").length);
    System.arraycopy(rest, 0, all, all.length - rest.length, rest.length);
    Run run = run(all);
    assertThat(run.code()).as(run.output()).isZero();
    return hidden;
  }
}
