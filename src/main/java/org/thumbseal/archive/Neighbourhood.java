package org.thumbseal.archive;

import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Collections;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import org.thumbseal.seal.ChainEnd;
import org.thumbseal.seal.Head;
import org.thumbseal.seal.LedgerEntry;
import org.thumbseal.seal.SealAnswer;
import org.thumbseal.seal.SealVerifier;
import org.thumbseal.seal.Sha256;

/**
 * The documents around one document. Its neighbours in the chain are as a rule its neighbours in
 * time, so they are looked for next to it first; where one is not there, every file is read once,
 * however many documents are asked about.
 */
final class Neighbourhood {
  private static final int NEAR = 8;

  private final ResultDirectory directory;
  private final SealVerifier verifier;
  private final Optional<Head> head;
  private final boolean headIsTrusted;
  private final List<Path> byName = new ArrayList<>();
  private final Map<Integer, Optional<LedgerEntry>> lately = new Lately();
  private Optional<Places> places = Optional.empty();
  private @Nullable Corrections corrections;

  Neighbourhood(ResultDirectory directory, SealVerifier verifier) throws IOException {
    this.directory = directory;
    this.verifier = verifier;
    List<Outcome> faults = new ArrayList<>();
    this.head = new HeadReading(directory, verifier).read(faults::add);
    this.headIsTrusted = faults.isEmpty();
    directory.forEachDocument(byName::add);
    byName.sort(Comparator.naturalOrder());
  }

  /** What is wrong with the place of this document, in half a sentence; empty when nothing is. */
  String fault(Path file, LedgerEntry entry, SealAnswer seal) {
    if (seal == SealAnswer.TRUSTED_KEY && !headIsTrusted) {
      return "head.json, which says where its chain ends, is not by a trusted key";
    }
    Optional<ChainEnd> end = head.flatMap(h -> h.end(entry.kid()));
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
    for (int distance = 1; distance <= NEAR; distance++) {
      for (int index : new int[] {middle - distance, middle + distance}) {
        Optional<LedgerEntry> entry = at(index).filter(e -> isAt(e, kid, sequence));
        if (entry.isPresent()) {
          return entry;
        }
      }
    }
    return places().find(kid, sequence).flatMap(Places::entry).filter(e -> isAt(e, kid, sequence));
  }

  private static boolean isAt(LedgerEntry entry, String kid, long sequence) {
    return entry.kid().equals(kid) && entry.position().sequence() == sequence;
  }

  private Optional<LedgerEntry> at(int index) {
    if (index < 0 || index >= byName.size()) {
      return Optional.empty();
    }
    Optional<LedgerEntry> known = lately.get(index);
    if (known == null) {
      known = Places.entry(byName.get(index));
      lately.put(index, known);
    }
    return known;
  }

  /** Who goes through a directory asks of each document twice: as the next one, and the last. */
  private static final class Lately extends LinkedHashMap<Integer, Optional<LedgerEntry>> {
    private static final long serialVersionUID = 1;

    @Override
    protected boolean removeEldestEntry(Map.Entry<Integer, Optional<LedgerEntry>> eldest) {
      return size() > 4 * NEAR;
    }
  }

  private Places places() {
    Places known = places.orElseGet(() -> Places.of(byName));
    places = Optional.of(known);
    return known;
  }
}
