package org.thumbseal.archive;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import org.thumbseal.seal.ChainEnd;
import org.thumbseal.seal.Sha256;

/**
 * Checks that the documents of one key are all there, each once, each naming the one before, up to
 * the end that the head names. A document whose own seal is broken keeps its place, so that one
 * fault is told once.
 */
final class ChainCheck {
  private final TreeMap<Long, List<Link>> places = new TreeMap<>();
  private final Map<Link, String> faults = new HashMap<>();
  private final List<String> missing = new ArrayList<>();

  private ChainCheck() {}

  /**
   * @param links documents of one key
   * @param end where the head lets the chain end, {@link ChainEnd#none} when it does not know it
   * @param newestEnd the same, read again after the documents were: what was added in between is
   *     not a fault
   */
  static ChainCheck of(List<Link> links, ChainEnd end, ChainEnd newestEnd) {
    ChainCheck check = new ChainCheck();
    links.forEach(
        link -> check.places.computeIfAbsent(link.sequence(), s -> new ArrayList<>()).add(link));
    check.places.values().forEach(check::checkPlace);
    check.checkGaps(end.sequence());
    check.checkFirst();
    check.places.forEach(check::checkOrder);
    check.checkEnd(end, newestEnd);
    return check;
  }

  /** What is wrong with the place of a document, in half a sentence. */
  Map<Link, String> faults() {
    return faults;
  }

  /** What is not there, a range a line. */
  List<String> missing() {
    return missing;
  }

  private void checkPlace(List<Link> place) {
    if (place.stream().anyMatch(Link::sound)) {
      place.removeIf(link -> !link.sound());
    }
    for (Link other : place.subList(1, place.size())) {
      Link first = place.get(0);
      if (other.digest().equals(first.digest())) {
        fault(other, "is a copy of " + first.file().getFileName());
      } else {
        fault(first, "fork: two documents bear number " + first.sequence());
        fault(other, "fork: two documents bear number " + first.sequence());
      }
    }
  }

  private void checkGaps(long end) {
    long expected = 1;
    for (long sequence : places.keySet()) {
      reportMissing(expected, sequence - 1, "");
      expected = sequence + 1;
    }
    reportMissing(expected, end, ": the end was cut off");
  }

  private void reportMissing(long from, long to, String remark) {
    if (from == to) {
      missing.add("document " + from + " is missing" + remark);
    } else if (from < to) {
      missing.add("documents " + from + " to " + to + " are missing" + remark);
    }
  }

  private void checkFirst() {
    for (Link link : places.getOrDefault(1L, List.of())) {
      if (link.sound() && !link.entry().position().previous().equals(Sha256.ZEROS)) {
        fault(link, "is number 1 and yet names a document before it");
      }
    }
  }

  private void checkOrder(long sequence, List<Link> place) {
    List<Link> before = places.getOrDefault(sequence - 1, List.of());
    boolean known = !before.isEmpty() && before.stream().allMatch(Link::sound);
    for (Link link : place) {
      if (known && link.sound() && before.stream().noneMatch(link::follows)) {
        fault(link, "does not follow " + before.get(0).file().getFileName());
      }
    }
  }

  private void checkEnd(ChainEnd end, ChainEnd newestEnd) {
    for (Link link : places.getOrDefault(end.sequence(), List.of())) {
      if (link.sound() && !link.digest().equals(end.digest())) {
        fault(link, "is not the document that head.json names");
      }
    }
    for (List<Link> beyond : places.tailMap(newestEnd.sequence(), false).values()) {
      beyond.stream().filter(Link::sound).forEach(l -> fault(l, "is not known to head.json"));
    }
  }

  private void fault(Link link, String text) {
    faults.putIfAbsent(link, text);
  }
}
