package org.thumbseal.feed;

import java.util.ArrayDeque;
import java.util.Collection;
import java.util.Comparator;
import java.util.Deque;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import java.util.stream.Stream;
import org.thumbseal.archive.Sequenced;

/**
 * What is to be sent, and in which order; one is under way at a time. The order of a chain is never
 * left: the next document goes when the one before was acknowledged or refused for good. Where a
 * directory has chains of several keys, that goes first whose name, which begins with the instant
 * of the test, is lower. What becomes of a document that was sent without an answer is not known,
 * so it stays the next.
 */
final class Outbox {
  private static final Comparator<Sequenced> BETWEEN_CHAINS =
      Comparator.<Sequenced, String>comparing(s -> s.file().getFileName().toString())
          .thenComparing(Sequenced::kid);

  private final Map<String, Deque<Sequenced>> chains = new TreeMap<>();
  private Progress progress;

  Outbox(Progress progress) {
    this.progress = progress;
  }

  Progress progress() {
    return progress;
  }

  /** What was found takes the place of what was known to wait. */
  void found(Collection<Sequenced> documents) {
    chains.clear();
    List<Sequenced> inOrder =
        documents.stream().sorted(Comparator.comparingLong(Sequenced::sequence)).toList();
    for (Sequenced each : inOrder) {
      if (progress.wants(each.kid(), each.sequence())) {
        chains.computeIfAbsent(each.kid(), k -> new ArrayDeque<>()).add(each);
      }
    }
  }

  /** The one to be sent now. */
  Optional<Sequenced> next() {
    return chains.values().stream()
        .flatMap(chain -> Stream.ofNullable(chain.peekFirst()))
        .min(BETWEEN_CHAINS);
  }

  /** The one that would be sent if the next one were not there. */
  Optional<Sequenced> afterNext() {
    Optional<Sequenced> next = next();
    return chains.values().stream()
        .flatMap(chain -> chain.stream().filter(s -> !next.equals(Optional.of(s))).limit(1))
        .min(BETWEEN_CHAINS);
  }

  /** The next one has arrived. */
  void acknowledged(Sequenced next) {
    remove(next);
    progress = progress.acknowledged(next.kid(), next.sequence());
  }

  /** The next one will never be taken as it is. */
  void refused(Sequenced next, String why) {
    remove(next);
    progress = progress.refused(next.kid(), next.sequence(), why);
  }

  /** The next one is not there any more; it goes when it is. */
  void missing(Sequenced next) {
    remove(next);
  }

  /** There was no more to be found up to here, and all of it is settled. */
  void lookedThrough(Map<String, Long> ends) {
    progress = progress.lookedThrough(ends);
  }

  private void remove(Sequenced next) {
    Deque<Sequenced> chain = chains.get(next.kid());
    if (chain == null || !next.equals(chain.peekFirst())) {
      throw new IllegalArgumentException("is not the next one: " + next);
    }
    chain.removeFirst();
    if (chain.isEmpty()) {
      chains.remove(next.kid());
    }
  }
}
