package org.thumbseal.archive;

import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Collections;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import org.thumbseal.json.JsonGate;
import org.thumbseal.json.JsonRefusedException;
import org.thumbseal.seal.ChainEnd;
import org.thumbseal.seal.Head;
import org.thumbseal.seal.LedgerEntry;
import org.thumbseal.seal.SealVerifier;
import org.thumbseal.seal.Sha256;
import tools.jackson.databind.node.ObjectNode;

/**
 * The documents around one document. Its neighbours in the chain are as a rule its neighbours in
 * time, so they are looked for outwards from it; only where one is missing are all files read.
 */
final class Neighbourhood {
  private final ResultDirectory directory;
  private final SealVerifier verifier;
  private final List<Path> byName;
  private @Nullable Corrections corrections;

  Neighbourhood(ResultDirectory directory, SealVerifier verifier) throws IOException {
    this.directory = directory;
    this.verifier = verifier;
    this.byName = new ArrayList<>();
    directory.forEachDocument(byName::add);
    byName.sort(Comparator.naturalOrder());
  }

  /** What is wrong with the place of this document, in half a sentence; empty when nothing is. */
  String fault(Path file, LedgerEntry entry) {
    Optional<ChainEnd> end = end(entry.kid());
    if (end.isEmpty()) {
      return "head.json does not vouch for its chain";
    }
    String fault = endFault(entry, end.get());
    fault = fault.isEmpty() ? beforeFault(file, entry) : fault;
    boolean last = entry.position().sequence() >= end.get().sequence();
    return fault.isEmpty() && !last ? afterFault(file, entry) : fault;
  }

  /** The corrections in this directory, by the digest of what they correct. */
  Map<String, List<SealedCorrection>> corrections() throws IOException {
    Corrections known = corrections;
    if (known == null) {
      known = Corrections.in(directory, verifier, remark -> {});
      corrections = known;
    }
    return known.all();
  }

  private Optional<ChainEnd> end(String kid) {
    try {
      ObjectNode tree = directory.head();
      return verifier.check(tree).intact()
          ? Head.read(tree).flatMap(h -> h.end(kid))
          : Optional.empty();
    } catch (JsonRefusedException e) {
      return Optional.empty();
    }
  }

  private static String endFault(LedgerEntry entry, ChainEnd end) {
    long sequence = entry.position().sequence();
    if (sequence > end.sequence()) {
      return "is not known to head.json";
    }
    boolean other = sequence == end.sequence() && !entry.digest().equals(end.digest());
    return other ? "is not the document that head.json names" : "";
  }

  private String beforeFault(Path file, LedgerEntry entry) {
    long sequence = entry.position().sequence();
    String previous = entry.position().previous();
    if (sequence == 1) {
      return previous.equals(Sha256.ZEROS)
          ? continuesFault(file, entry)
          : "is number 1 and yet names a document before it";
    }
    return find(file, entry.kid(), sequence - 1)
        .map(before -> before.digest().equals(previous) ? "" : "does not follow the one before it")
        .orElse("the document before it is missing");
  }

  private String continuesFault(Path file, LedgerEntry entry) {
    Optional<ChainEnd> earlier = entry.position().continues();
    return earlier
        .flatMap(end -> find(file, end.kid(), end.sequence()))
        .filter(e -> e.digest().equals(earlier.get().digest()))
        .map(e -> "")
        .orElse(earlier.map(Link::tornFrom).orElse(""));
  }

  private String afterFault(Path file, LedgerEntry entry) {
    return find(file, entry.kid(), entry.position().sequence() + 1)
        .map(
            after ->
                after.position().previous().equals(entry.digest())
                    ? ""
                    : "the one after it does not follow")
        .orElse("the document after it is missing");
  }

  private Optional<LedgerEntry> find(Path file, String kid, long sequence) {
    int found = Collections.binarySearch(byName, file);
    int middle = found < 0 ? -found - 1 : found;
    for (int distance = 1; distance <= byName.size(); distance++) {
      Optional<LedgerEntry> entry =
          at(middle - distance, kid, sequence).or(nextAt(middle + distance, kid, sequence));
      if (entry.isPresent()) {
        return entry;
      }
    }
    return Optional.empty();
  }

  private java.util.function.Supplier<Optional<LedgerEntry>> nextAt(
      int index, String kid, long sequence) {
    return () -> at(index, kid, sequence);
  }

  private Optional<LedgerEntry> at(int index, String kid, long sequence) {
    if (index < 0 || index >= byName.size()) {
      return Optional.empty();
    }
    try {
      return LedgerEntry.read(JsonGate.read(byName.get(index)))
          .filter(e -> e.kid().equals(kid) && e.position().sequence() == sequence);
    } catch (JsonRefusedException e) {
      return Optional.empty();
    }
  }
}
