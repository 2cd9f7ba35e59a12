package org.thumbseal.archive;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.thumbseal.seal.ChainEnd;
import org.thumbseal.seal.LedgerEntry;
import org.thumbseal.seal.SealAnswer;
import org.thumbseal.seal.Sha256;

/** The documents of one key, added as they are met. */
final class Chain {
  private static final Digest NONE = Digest.of(Sha256.ZEROS);

  private final List<Link> links = new ArrayList<>();
  private final Map<Link.Standing, Link.Standing> standings = new HashMap<>();
  private final Map<Link, ChainEnd> ties = new HashMap<>();
  private Digest latest = NONE;
  private Optional<Period> period = Optional.empty();

  /** Takes a document that claims this place. */
  void add(Path folder, String name, LedgerEntry entry, Link.Standing standing) {
    Digest previous = Digest.of(entry.position().previous());
    Link link =
        new Link(
            folder,
            name,
            entry.position().sequence(),
            Digest.of(entry.digest()),
            previous.equals(latest) ? latest : previous,
            standings.computeIfAbsent(standing, s -> s));
    latest = link.digest();
    links.add(link);
    entry.position().continues().ifPresent(earlier -> ties.put(link, earlier));
  }

  /** The end of another key's chain that this document continues. */
  Optional<ChainEnd> tie(Link link) {
    return Optional.ofNullable(ties.get(link));
  }

  /**
   * Whether a document with this number and digest is among them; to be asked after {@link
   * #inOrder}.
   */
  boolean holds(ChainEnd end) {
    int low = 0;
    int high = links.size();
    while (low < high) {
      int middle = (low + high) >>> 1;
      low = links.get(middle).sequence() < end.sequence() ? middle + 1 : low;
      high = links.get(middle).sequence() < end.sequence() ? high : middle;
    }
    return links.stream()
        .skip(low)
        .takeWhile(link -> link.sequence() == end.sequence())
        .anyMatch(link -> link.isAt(end));
  }

  /** A document of this chain has this date. */
  void dated(Period date) {
    period = period.map(date::with).or(() -> Optional.of(date));
  }

  /** What there is of it, under this key. */
  ChainSummary summary(String kid) {
    Link.Standing best =
        standings.keySet().stream()
            .min(Comparator.comparing(Link.Standing::answer))
            .orElse(new Link.Standing(SealAnswer.BROKEN_CHAIN, "", "", true));
    String signer = best.signer().isEmpty() ? kid : best.signer();
    return new ChainSummary(kid, signer, best.answer(), links.size(), period);
  }

  /** All of them by their number, those with the same number by the name of their file. */
  List<Link> inOrder() {
    links.sort(
        Comparator.comparingLong(Link::sequence)
            .thenComparing(Link::folder)
            .thenComparing(Link::name));
    return links;
  }
}
