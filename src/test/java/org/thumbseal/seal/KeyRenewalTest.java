package org.thumbseal.seal;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.PosixFilePermissions;
import java.time.Instant;
import java.time.InstantSource;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.condition.DisabledOnOs;
import org.junit.jupiter.api.condition.OS;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.thumbseal.json.Canonical;
import org.thumbseal.json.ExampleDocument;
import org.thumbseal.json.JsonGate;
import tools.jackson.databind.node.ObjectNode;

/** The change of a key, whole and cut short between any two steps. */
class KeyRenewalTest {
  private static final Instant NOW = Instant.parse("2026-06-30T12:00:00Z");

  @TempDir private Path folder;
  private Path file;
  private SigningKey old;
  private String oldText;

  @BeforeEach
  void aKeyInUse() throws Exception {
    file = folder.resolve("keys/k.pem");
    old = KeyStore.create(file).key();
    oldText = Files.readString(file);
  }

  private KeyRenewal renewal() {
    return new KeyRenewal(file, InstantSource.fixed(NOW));
  }

  private RenewedKey renew() throws Exception {
    return renewal().renew(old, Optional.empty(), Optional.empty());
  }

  private Path beside(String name) {
    return file.resolveSibling(name);
  }

  private List<String> names() throws IOException {
    try (Stream<Path> all = Files.list(beside(""))) {
      return all.map(f -> f.getFileName().toString())
          .filter(name -> !name.equals(".k.pem.lock"))
          .sorted()
          .toList();
    }
  }

  private SealAnswer answer(SigningKey key, String startedAt) throws Exception {
    ObjectNode document = ExampleDocument.unsealed();
    ((ObjectNode) document.get("test")).put("startedAt", startedAt);
    return new SealVerifier(TrustStore.load(KeyStore.defaultTrust(file)))
        .check(Seal.seal(document, LedgerPosition.FIRST, key))
        .answer();
  }

  @Test
  void aNewKeyIsInUseAndTheOldOneIsKept() throws Exception {
    RenewedKey renewed = renew();

    assertThat(names())
        .containsExactly("k-until-20260630T120000Z.pem", "k.jwk", "k.pem", "trusted");
    assertThat(Files.readString(renewed.kept())).isEqualTo(oldText);
    OpenedKey opened = KeyStore.load(file);
    assertThat(opened.notes()).isEmpty();
    assertThat(opened.key().verifyingKey())
        .isEqualTo(renewed.key().key().verifyingKey())
        .isNotEqualTo(old.verifyingKey());
    assertThat(KeyStore.publicHalf(file)).contains(opened.key().verifyingKey());
    assertThat(KeyStore.load(renewed.kept()).key().verifyingKey()).isEqualTo(old.verifyingKey());
  }

  @Test
  @DisabledOnOs(OS.WINDOWS)
  void everyFileIsForItsOwnerAlone() throws Exception {
    RenewedKey renewed = renew();

    for (Path path : List.of(file, renewed.kept(), renewed.trusted())) {
      assertThat(PosixFilePermissions.toString(Files.getPosixFilePermissions(path)))
          .isEqualTo("rw-------");
    }
  }

  @Test
  void whatTheOldKeySealedIsTrustedUntilTheChange() throws Exception {
    SigningKey fresh = renew().key().key();

    assertThat(answer(old, "2026-06-30T11:59:59.999Z")).isEqualTo(SealAnswer.TRUSTED_KEY);
    assertThat(answer(old, "2026-06-30T12:00:00.001Z")).isEqualTo(SealAnswer.UNKNOWN_KEY);
    assertThat(answer(fresh, "2026-06-30T12:00:00.001Z")).isEqualTo(SealAnswer.TRUSTED_KEY);
  }

  @Test
  void twoChangesInOneSecond() throws Exception {
    RenewedKey first = renew();
    String firstText = Files.readString(file);
    RenewedKey second = renewal().renew(first.key().key(), Optional.empty(), Optional.empty());

    assertThat(second.kept()).isEqualTo(beside("k-until-20260630T120001Z.pem"));
    assertThat(Files.readString(first.kept())).isEqualTo(oldText);
    assertThat(Files.readString(second.kept())).isEqualTo(firstText);
    assertThat(TrustStore.load(KeyStore.defaultTrust(file)).size()).isEqualTo(3);
  }

  @Test
  void theNameGoesOn() throws Exception {
    RenewedKey first = renewal().renew(old, Optional.of("Ward 3"), Optional.empty());
    RenewedKey second = renewal().renew(first.key().key(), Optional.empty(), Optional.empty());

    assertThat(TrustStore.load(KeyStore.defaultTrust(file)).all())
        .hasSize(3)
        .allMatch(key -> key.name().equals("Ward 3"));
    assertThat(JsonGate.read(second.trusted()).path("validUntil").stringValue())
        .isEqualTo("2026-06-30T12:00:00Z");
  }

  @Test
  void aPublicKeyOfSomebodyElseBesideItIsSaid() throws Exception {
    Files.writeString(
        KeyStore.publicFile(file), Canonical.text(SigningKey.generate().verifyingKey().jwk()));

    assertThatThrownBy(this::renew)
        .isInstanceOf(KeyException.class)
        .hasMessageContaining("k.jwk: is not the public half of ");
    assertThat(names()).containsExactly("k.jwk", "k.pem");
    Files.delete(KeyStore.publicFile(file));
    assertThat(renew().kept()).exists();
  }

  /** Power lost before the rename: all that was written beside it, then less of it. */
  @ParameterizedTest
  @ValueSource(strings = {"k.pem.new k.jwk.new k.pem.old", "k.pem.new k.jwk.new", "k.pem.new"})
  void cutShortBeforeTheChange(String left) throws Exception {
    for (String name : List.of(left.split(" "))) {
      Files.writeString(beside(name), oldText.substring(0, 40));
    }
    OpenedKey opened = KeyStore.load(file);

    assertThat(opened.notes()).singleElement().asString().contains("cut short before it was made");
    assertThat(opened.key().verifyingKey()).isEqualTo(old.verifyingKey());
    assertThat(Files.readString(file)).isEqualTo(oldText);
    assertThat(names()).containsExactly("k.jwk", "k.pem");
    assertThat(KeyStore.load(file).notes()).isEmpty();
    assertThat(renew().kept()).exists();
  }

  /** Power lost after the rename; the last two steps may have been done or not. */
  @ParameterizedTest
  @ValueSource(ints = {0, 1, 2})
  void cutShortAfterTheChange(int done) throws Exception {
    String oldPublic = Files.readString(KeyStore.publicFile(file));
    SigningKey fresh = renewal().renew(old, Optional.of("Ward 3"), Optional.empty()).key().key();
    Files.move(beside("k-until-20260630T120000Z.pem"), beside("k.pem.old"));
    if (done < 2) {
      Files.move(beside("k.jwk"), beside("k.jwk.new"));
      Files.writeString(beside("k.jwk"), oldPublic);
    }
    if (done < 1) {
      Files.delete(beside("trusted/k-until-20260630T120000Z.jwk"));
    }
    assertThat(answer(old, "2026-06-30T11:00:00Z")).isEqualTo(SealAnswer.TRUSTED_KEY);

    List<String> notes = new KeyRenewal(file, InstantSource.fixed(NOW.plusSeconds(60))).settle();

    assertThat(notes).singleElement().asString().contains("finished a change of the key");
    assertThat(names())
        .containsExactly("k-until-20260630T120100Z.pem", "k.jwk", "k.pem", "trusted");
    assertThat(Files.readString(beside("k-until-20260630T120100Z.pem"))).isEqualTo(oldText);
    assertThat(KeyStore.load(file).notes()).isEmpty();
    assertThat(KeyStore.publicHalf(file)).contains(fresh.verifyingKey());
    assertThat(answer(old, "2026-06-30T11:00:00Z")).isEqualTo(SealAnswer.TRUSTED_KEY);
    assertThat(answer(old, "2026-06-30T12:02:00Z")).isEqualTo(SealAnswer.UNKNOWN_KEY);
    assertThat(answer(fresh, "2026-06-30T12:02:00Z")).isEqualTo(SealAnswer.TRUSTED_KEY);
    assertThat(TrustStore.load(KeyStore.defaultTrust(file)).all())
        .allMatch(key -> key.name().equals("Ward 3"));
  }

  /** The trust folder cannot be made: the new key is in use, and the next start finishes. */
  @Test
  void aTrustFolderThatCannotBeMade() throws Exception {
    Path way = Files.writeString(beside("trusted"), "in the way");

    assertThatThrownBy(() -> KeyStore.renew(file, Optional.empty(), Passphrases.NONE))
        .isInstanceOf(KeyException.class)
        .hasMessageContaining("trusted");
    Files.delete(way);
    OpenedKey opened = KeyStore.load(file);
    assertThat(opened.notes()).hasSize(1);
    assertThat(opened.key().verifyingKey()).isNotEqualTo(old.verifyingKey());
    assertThat(names()).hasSize(4).doesNotContain("k.pem.new", "k.pem.old", "k.jwk.new");
  }
}
