package org.thumbseal.archive;

import java.nio.file.Path;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.thumbseal.json.JsonGate;
import org.thumbseal.json.JsonRefusedException;
import org.thumbseal.seal.LedgerEntry;

/** Which document claims which place, of all chains of a directory. */
final class Places {
  private final Map<String, Map<Long, Path>> chains = new HashMap<>();

  private Places() {}

  /** Reads all of these documents. */
  static Places of(List<Path> files) {
    Places places = new Places();
    files.forEach(file -> entry(file).ifPresent(entry -> places.add(file, entry)));
    return places;
  }

  /** The document of a key that claims this place; of several the first by name. */
  Optional<Path> find(String kid, long sequence) {
    return Optional.ofNullable(chains.getOrDefault(kid, Map.of()).get(sequence));
  }

  /** What a document says of its place, whoever sealed it; empty when it says nothing. */
  static Optional<LedgerEntry> entry(Path file) {
    try {
      return LedgerEntry.read(JsonGate.read(file));
    } catch (JsonRefusedException e) {
      return Optional.empty();
    }
  }

  private void add(Path file, LedgerEntry entry) {
    chains
        .computeIfAbsent(entry.kid(), k -> new HashMap<>())
        .putIfAbsent(entry.position().sequence(), file);
  }
}
