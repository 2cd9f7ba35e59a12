package org.thumbseal.index;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.util.List;
import java.util.Optional;
import org.thumbseal.archive.Archive;
import org.thumbseal.archive.ArchiveException;
import org.thumbseal.archive.Corrections;
import org.thumbseal.json.CorrectionTree;
import org.thumbseal.json.ExampleDocument;
import org.thumbseal.json.Json;
import org.thumbseal.json.JsonGate;
import org.thumbseal.record.Correction;
import org.thumbseal.record.Correction.Change;
import org.thumbseal.record.Correction.Said;
import org.thumbseal.seal.SigningKey;
import org.thumbseal.seal.TrustStore;
import tools.jackson.databind.node.ObjectNode;

/**
 * A results directory that grows.
 *
 * @param path of the directory
 * @param key that seals
 */
record BenchResults(Path path, SigningKey key) {
  private static final Instant NOON = Instant.parse("2026-05-03T12:00:00Z");

  static BenchResults in(Path path) throws IOException {
    return new BenchResults(Files.createDirectories(path), SigningKey.generate());
  }

  TrustStore trust() {
    return TrustStore.of(key.verifyingKey());
  }

  Path test(int number, String asset) throws ArchiveException {
    return test(document(number, asset));
  }

  static ObjectNode document(int number, String asset) {
    ObjectNode document = ExampleDocument.unsealed(number);
    document.putObject("asset").put("id", asset);
    return document;
  }

  Path test(ObjectNode document) throws ArchiveException {
    try (Archive archive = Archive.open(path, key)) {
      return archive.store(document, new byte[] {'#'}).document();
    }
  }

  Path document(ObjectNode document) throws ArchiveException {
    try (Archive archive = Archive.open(path, key)) {
      return archive.store(document).document();
    }
  }

  Path move(Path result, String asset) throws Exception {
    return amend(result, new Change(Optional.of(asset), Optional.empty(), Optional.empty()));
  }

  Path voided(Path result, boolean gone) throws Exception {
    return amend(result, new Change(Optional.empty(), Optional.empty(), Optional.of(gone)));
  }

  private Path amend(Path result, Change change) throws Exception {
    Said said = new Said(change, Optional.of("hose mixed up"), Optional.of("N. Osei"), NOON);
    Corrections known = Corrections.in(path, trust(), remark -> {});
    Correction next = known.next(result, JsonGate.read(result), said);
    return document(CorrectionTree.of(next));
  }

  Path inspection(int number, String asset, String work, String day) throws ArchiveException {
    ObjectNode tree =
        Json.object().put("schema", "thumbseal-inspection/1").put("kind", "inspection");
    tree.put(
        "id", String.format(java.util.Locale.ROOT, "%08x-0000-8000-8000-000000000001", number));
    tree.putObject("asset").put("id", asset);
    tree.put("work", work).put("on", day).put("by", "A. Mensah").put("inOrder", true);
    return document(tree.put("recordedAt", day + "T10:00:00.000Z"));
  }

  /** Changes a document so that its seal no longer fits. */
  static void tamper(Path file) throws IOException {
    Files.writeString(file, Files.readString(file).replace("\"pass\"", "\"fail\""));
  }

  List<IndexedTest> tests(Records records, String asset) throws RecordsException {
    records.refresh(path, trust());
    return records.tests(asset);
  }
}
