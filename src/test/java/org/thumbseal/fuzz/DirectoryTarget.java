package org.thumbseal.fuzz;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.Stream;
import org.thumbseal.archive.Archive;
import org.thumbseal.archive.ArchiveException;
import org.thumbseal.archive.Outcome;
import org.thumbseal.archive.Verification;
import org.thumbseal.json.ExampleDocument;
import org.thumbseal.seal.SealAnswer;
import org.thumbseal.seal.SigningKey;
import org.thumbseal.seal.TrustStore;
import tools.jackson.databind.node.ObjectNode;

/**
 * A small result directory in which one file is spoilt, dropped, or put in the place of another:
 * the check of the whole must not pass, unless the file still says what it said.
 */
final class DirectoryTarget implements Target {
  private final SigningKey key = Keys.of(1);
  private final Path directory = Files.createTempDirectory("thumbseal-fuzz");
  private final Map<Path, byte[]> genuine = new LinkedHashMap<>();
  private final List<Path> files;
  private long passed;
  private long refused;

  DirectoryTarget() throws Exception {
    try (Archive archive = Archive.open(directory, key)) {
      for (int number = 1; number <= 5; number++) {
        byte[] capture = Bytes.of("# thumbseal capture 1\n# note " + number + "\n");
        archive.store(document(number), capture);
      }
    }
    try (Stream<Path> all = Files.walk(directory)) {
      files = all.filter(DirectoryTarget::isEvidence).sorted().toList();
    }
    for (Path file : files) {
      genuine.put(file, Files.readAllBytes(file));
    }
  }

  private static ObjectNode document(int number) {
    ObjectNode document = ExampleDocument.unsealed(number);
    ((ObjectNode) document.get("evidence")).remove("sha256");
    return document;
  }

  private static boolean isEvidence(Path file) {
    String name = file.getFileName().toString();
    return Files.isRegularFile(file) && (name.endsWith(".json") || name.endsWith(".log"));
  }

  @Override
  public Attempt next(Dice dice) {
    Path file = dice.of(files);
    byte[] old = original(file);
    byte[] donor = original(dice.of(files));
    byte[] spoilt = dice.oneIn(8) ? donor : Mutation.some(old, donor, dice);
    boolean drop = dice.oneIn(8);
    return new Reading(spoilt, input -> verify(file, drop ? null : input));
  }

  private byte[] original(Path file) {
    return genuine.getOrDefault(file, new byte[0]);
  }

  private void verify(Path file, byte @org.jspecify.annotations.Nullable [] content)
      throws Exception {
    try {
      if (content == null) {
        Files.delete(file);
      } else {
        Files.write(file, content);
      }
      boolean good = isGood();
      if (good && !isSame(file, content)) {
        throw new AssertionError("FORGERY accepted: " + file);
      }
      passed += good ? 1 : 0;
      refused += good ? 0 : 1;
    } finally {
      Files.write(file, original(file));
    }
  }

  private boolean isGood() {
    List<Outcome> all = new ArrayList<>();
    try {
      Verification verification = new Verification(TrustStore.of(key.verifyingKey()));
      verification.directory(directory, all::add);
      files.stream()
          .filter(f -> f.toString().endsWith(".json"))
          .map(verification::file)
          .forEach(all::add);
    } catch (ArchiveException e) {
      Said.requirePlain(String.valueOf(e.getMessage()));
      return false;
    }
    return !all.isEmpty()
        && all.stream()
            .allMatch(o -> o instanceof Outcome.Answered a && a.answer() == SealAnswer.TRUSTED_KEY);
  }

  /** A document may be spelled in other words; a capture may not. */
  private boolean isSame(Path file, byte @org.jspecify.annotations.Nullable [] content)
      throws Exception {
    if (content == null) {
      return false;
    }
    return file.toString().endsWith(".json")
        ? org.thumbseal.json.JsonGate.read(content)
                .equals(org.thumbseal.json.JsonGate.read(original(file)))
            || org.thumbseal.json.Canonical.text(org.thumbseal.json.JsonGate.read(content))
                .equals(new String(original(file), java.nio.charset.StandardCharsets.UTF_8).strip())
        : java.util.Arrays.equals(content, original(file));
  }

  @Override
  public String figures() {
    return refused + " directories refused, " + passed + " passed in other words\n";
  }
}
