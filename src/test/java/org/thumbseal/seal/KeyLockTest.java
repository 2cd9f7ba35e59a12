package org.thumbseal.seal;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStreamReader;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.PosixFilePermissions;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import java.util.concurrent.atomic.AtomicBoolean;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.condition.DisabledOnOs;
import org.junit.jupiter.api.condition.OS;
import org.junit.jupiter.api.io.TempDir;

/** A key that is changed while other programs load it. */
class KeyLockTest {
  private static final int ROUNDS = 60;

  @TempDir private Path folder;
  private Path file;
  private SigningKey first;

  @BeforeEach
  void aKeyInUse() throws Exception {
    file = folder.resolve("keys/k.pem");
    first = KeyStore.create(file).key();
  }

  private Path beside(String name) {
    return file.resolveSibling(name);
  }

  private void halfAChange() throws IOException {
    Files.writeString(beside("k.pem.new"), "x");
  }

  @Test
  void aChangeUnderWayIsLeftAlone() throws Exception {
    halfAChange();
    try (KeyLock held = KeyLock.take(file)) {
      OpenedKey opened = KeyStore.load(file);
      assertThat(opened.notes()).isEmpty();
      assertThat(opened.key().verifyingKey()).isEqualTo(first.verifyingKey());
      assertThat(beside("k.pem.new")).exists();
      assertThatThrownBy(() -> KeyStore.renew(file, Optional.empty(), Passphrases.NONE))
          .isInstanceOf(KeyException.class)
          .hasMessageContaining("another program is changing this key");
      assertThat(new KeyRenewal(file, java.time.InstantSource.system()).settle(held)).hasSize(1);
    }
    assertThat(beside("k.pem.new")).doesNotExist();
    assertThat(KeyStore.load(file).notes()).isEmpty();
  }

  /** It has the lock until it is killed; then what it left is put in order. */
  @Test
  void aChangeByAnotherProcess() throws Exception {
    halfAChange();
    Process other = other();
    try (BufferedReader says =
        new BufferedReader(
            new InputStreamReader(other.getInputStream(), StandardCharsets.US_ASCII))) {
      assertThat(says.readLine()).isEqualTo("has it");
      assertThat(KeyStore.load(file).notes()).isEmpty();
      assertThat(KeyStore.load(file).notes()).as("its lock outlives attempts").isEmpty();
      assertThat(beside("k.pem.new")).exists();
    } finally {
      other.destroyForcibly().waitFor();
    }
    assertThat(KeyStore.load(file).notes()).singleElement().asString().contains("cut short");
    assertThat(beside("k.pem.new")).doesNotExist();
  }

  private Process other() throws IOException {
    return new ProcessBuilder(
            Path.of(System.getProperty("java.home"), "bin", "java").toString(),
            "-cp",
            System.getProperty("java.class.path"),
            KeyLockTest.class.getName(),
            file.toString())
        .redirectError(ProcessBuilder.Redirect.DISCARD)
        .start();
  }

  /** The other process. */
  @SuppressWarnings("SystemOut") // How it speaks to the test.
  public static void main(String... args) throws Exception {
    KeyLock lock = KeyLock.take(Path.of(args[0]));
    System.out.println("has it");
    // Ends with the test, too: then standard input does.
    int unused = System.in.read();
    lock.close();
  }

  /** Each key that was in use is kept, and the last one has its own public half. */
  @Test
  void changesWhileAnotherThreadLoadsTheKey() throws Exception {
    AtomicBoolean done = new AtomicBoolean();
    ExecutorService other = Executors.newSingleThreadExecutor();
    try {
      Future<Integer> notes = other.submit(() -> loads(done));
      SigningKey key = first;
      for (int i = 0; i < ROUNDS; i++) {
        RenewedKey renewed = KeyStore.renew(file, Optional.empty(), Passphrases.NONE);
        assertThat(KeyStore.load(renewed.kept()).key().verifyingKey())
            .as("round %d", i)
            .isEqualTo(key.verifyingKey());
        key = renewed.key().key();
        assertThat(KeyStore.load(file).key().verifyingKey()).isEqualTo(key.verifyingKey());
        assertThat(KeyStore.publicHalf(file)).contains(key.verifyingKey());
      }
      done.set(true);
      assertThat(notes.get()).as("changes that were meddled with").isZero();
    } finally {
      done.set(true);
      other.shutdownNow();
    }
    assertThat(TrustStore.load(KeyStore.defaultTrust(file)).size()).isEqualTo(ROUNDS + 1);
  }

  private int loads(AtomicBoolean done) throws KeyException {
    int notes = 0;
    while (!done.get()) {
      notes += KeyStore.load(file).notes().size();
    }
    return notes;
  }

  /** To lock it must not be to write into what a link leads to. */
  @Test
  @DisabledOnOs(OS.WINDOWS)
  void theFileIsForItsOwnerAloneAndNoLink() throws Exception {
    KeyStore.renew(file, Optional.empty(), Passphrases.NONE);
    Path lock = beside(".k.pem.lock");
    assertThat(PosixFilePermissions.toString(Files.getPosixFilePermissions(lock)))
        .isEqualTo("rw-------");
    assertThat(TrustStore.load(List.of(beside(""))).size()).isEqualTo(1);

    Files.delete(lock);
    Files.createSymbolicLink(lock, folder.resolve("elsewhere"));
    assertThatThrownBy(() -> KeyStore.renew(file, Optional.empty(), Passphrases.NONE))
        .isInstanceOf(KeyException.class);
    assertThat(folder.resolve("elsewhere")).doesNotExist();
  }
}
