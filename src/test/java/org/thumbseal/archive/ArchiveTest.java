package org.thumbseal.archive;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.thumbseal.json.Canonical;
import org.thumbseal.json.ExampleDocument;
import org.thumbseal.json.JsonGate;
import org.thumbseal.seal.Seal;
import org.thumbseal.seal.Sha256;
import org.thumbseal.seal.SigningKey;
import tools.jackson.databind.node.ObjectNode;

class ArchiveTest {
  private static final byte[] CAPTURE = "# thumbseal capture 1\n".getBytes(StandardCharsets.UTF_8);
  private static final SigningKey KEY = SigningKey.generate();

  @TempDir private Path folder;

  @Test
  void storesUnderTheNamesOfTheContract() throws Exception {
    try (Archive archive = Archive.open(folder, KEY)) {
      StoredResult stored = archive.store(ExampleDocument.unsealed(), CAPTURE);

      String stem = "2026/20260302T071507Z_SP-014_pass_3f9a1c2e";
      assertThat(stored.added()).isTrue();
      assertThat(stored.document()).isEqualTo(folder.resolve(stem + ".json"));
      assertThat(Files.readAllBytes(folder.resolve(stem + ".log"))).isEqualTo(CAPTURE);
      assertThat(stored.sealed().path("evidence").path("capture").stringValue())
          .isEqualTo("20260302T071507Z_SP-014_pass_3f9a1c2e.log")
          .isEqualTo(Archive.captureName(ExampleDocument.unsealed()));
    }
  }

  @Test
  void theFileIsTheCanonicalFormAndLineFeed() throws Exception {
    try (Archive archive = Archive.open(folder, KEY)) {
      StoredResult stored = archive.store(ExampleDocument.unsealed(), CAPTURE);

      assertThat(Files.readString(stored.document()))
          .isEqualTo(Canonical.text(stored.sealed()) + "\n");
    }
  }

  @Test
  void eachDocumentNamesTheOneBefore() throws Exception {
    try (Archive archive = Archive.open(folder, KEY)) {
      ObjectNode first = archive.store(ExampleDocument.unsealed(1), CAPTURE).sealed();
      ObjectNode second = archive.store(ExampleDocument.unsealed(2), CAPTURE).sealed();

      assertLedger(first, 1, Sha256.ZEROS);
      assertLedger(second, 2, Seal.digest(first));
      ObjectNode head = JsonGate.read(folder.resolve("head.json"));
      assertThat(head.path("sequence").intValue()).isEqualTo(2);
      assertThat(head.path("digest").stringValue()).isEqualTo(Seal.digest(second));
    }
  }

  @Test
  void theChainGoesOnAfterReopening() throws Exception {
    ObjectNode first;
    try (Archive archive = Archive.open(folder, KEY)) {
      first = archive.store(ExampleDocument.unsealed(1), CAPTURE).sealed();
    }
    try (Archive archive = Archive.open(folder, KEY)) {
      assertThat(archive.notes()).isEmpty();
      assertLedger(
          archive.store(ExampleDocument.unsealed(2), CAPTURE).sealed(), 2, Seal.digest(first));
    }
  }

  private static void assertLedger(ObjectNode sealed, long sequence, String previous) {
    assertThat(sealed.path("ledger").path("sequence").longValue()).isEqualTo(sequence);
    assertThat(sealed.path("ledger").path("previous").stringValue()).isEqualTo(previous);
  }

  @Test
  void storingTwiceIsHarmless() throws Exception {
    try (Archive archive = Archive.open(folder, KEY)) {
      StoredResult first = archive.store(ExampleDocument.unsealed(), CAPTURE);
      StoredResult again = archive.store(ExampleDocument.unsealed(), CAPTURE);

      assertThat(again.added()).isFalse();
      assertThat(again.document()).isEqualTo(first.document());
      assertThat(Canonical.text(again.sealed())).isEqualTo(Canonical.text(first.sealed()));
      assertThat(JsonGate.read(folder.resolve("head.json")).path("sequence").intValue())
          .isEqualTo(1);
    }
  }

  @Test
  void idsThatBeginAlikeGetLongerNames() throws Exception {
    try (Archive archive = Archive.open(folder, KEY)) {
      ObjectNode other = ExampleDocument.unsealed();
      other.put("id", "3f9a1c2e-0000-8c41-9e02-6a1d4f8b2c70");

      archive.store(ExampleDocument.unsealed(), CAPTURE);
      StoredResult second = archive.store(other, CAPTURE);

      assertThat(second.added()).isTrue();
      assertThat(second.document().getFileName().toString()).endsWith("_pass_3f9a1c2e0.json");
    }
  }

  @Test
  void aDocumentOfAnotherCaptureIsRefusedAndLeavesNothing() throws Exception {
    ObjectNode document = ExampleDocument.unsealed();
    ((ObjectNode) document.get("evidence")).put("sha256", Sha256.hex(new byte[] {1}));
    try (Archive archive = Archive.open(folder, KEY)) {
      assertThatThrownBy(() -> archive.store(document, CAPTURE))
          .isInstanceOf(IllegalArgumentException.class);
    }
    assertThat(filesIn(folder.resolve("2026"))).isZero();
  }

  private static long filesIn(Path directory) throws IOException {
    try (var files = Files.list(directory)) {
      return files.count();
    }
  }
}
