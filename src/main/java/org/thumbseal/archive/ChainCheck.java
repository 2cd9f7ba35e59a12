package org.thumbseal.archive;

import java.util.ArrayList;
import java.util.List;
import org.thumbseal.seal.ChainEnd;
import org.thumbseal.seal.Sha256;

/**
 * Checks that the documents of one key are all there, each once, each naming the one before, up to
 * the end that the head names. A document whose own seal is broken keeps its place, so that one
 * fault is told once. Goes through the chain in order, three places in view.
 */
final class ChainCheck {
  private static final Digest NONE = Digest.of(Sha256.ZEROS);

  private final List<Link> links;
  private final End end;
  private final Findings findings;
  private int next;

  private ChainCheck(List<Link> links, End end, Findings findings) {
    this.links = links;
    this.end = end;
    this.findings = findings;
  }

  /** Is told of every document of the chain, and of what is not there. */
  interface Findings {
    /** One document or several in a row are not there; says which, in half a sentence. */
    void missing(String text);

    /** What is wrong with the place of a document, in half a sentence; empty when nothing is. */
    void judged(Link link, String fault);
  }

  /**
   * Where a chain ends.
   *
   * @param known where the head lets it end, {@link ChainEnd#none} when it does not know it
   * @param newest the same, read again after the documents were: what was added in between is not a
   *     fault
   */
  record End(ChainEnd known, ChainEnd newest) {
    boolean isNot(Link link) {
      return link.sequence() == known.sequence()
          && !link.digest().equals(Digest.of(known.digest()));
    }
  }

  /**
   * Checks one chain.
   *
   * @param links the documents of one key, by their number
   */
  static void run(List<Link> links, End end, Findings findings) {
    new ChainCheck(links, end, findings).run();
  }

  private void run() {
    List<Link> before = List.of();
    List<Link> place = nextPlace();
    long expected = 1;
    while (!place.isEmpty()) {
      List<Link> after = nextPlace();
      reportMissing(expected, number(place) - 1, "");
      check(before, place, soundest(after));
      expected = number(place) + 1;
      before = soundest(place);
      place = after;
    }
    reportMissing(expected, end.known().sequence(), ": the end was cut off");
  }

  /** The sound ones, or where there is none those that at least hold the place. */
  private static List<Link> soundest(List<Link> place) {
    List<Link> sound = place.stream().filter(Link::sound).toList();
    return sound.isEmpty() ? place : sound;
  }

  private static long number(List<Link> place) {
    return place.get(0).sequence();
  }

  /** All documents with the next number there is. */
  private List<Link> nextPlace() {
    List<Link> place = new ArrayList<>(1);
    while (next < links.size()
        && (place.isEmpty() || links.get(next).sequence() == number(place))) {
      place.add(links.get(next));
      next++;
    }
    return place;
  }

  private void reportMissing(long from, long to, String remark) {
    if (from == to) {
      findings.missing("document " + from + " is missing" + remark);
    } else if (from < to) {
      findings.missing("documents " + from + " to " + to + " are missing" + remark);
    }
  }

  private void check(List<Link> before, List<Link> place, List<Link> after) {
    List<Link> sound = soundest(place);
    for (Link link : place) {
      String fault = link.sound() ? placeFault(link, sound, after) : "";
      fault = fault.isEmpty() && link.sound() ? orderFault(link, before) : fault;
      fault = fault.isEmpty() && link.sound() ? endFault(link) : fault;
      findings.judged(link, fault);
    }
  }

  private String placeFault(Link link, List<Link> sound, List<Link> after) {
    Link first = sound.get(0);
    boolean fork = sound.stream().anyMatch(l -> !l.digest().equals(first.digest()));
    if (!link.equals(first) && link.digest().equals(first.digest())) {
      return "is a copy of " + first.file().getFileName();
    }
    return fork ? "fork: two documents bear number " + link.sequence() + wayOn(link, after) : "";
  }

  /** Which of two was there first, as far as head and following document can tell. */
  private String wayOn(Link link, List<Link> after) {
    if (link.sequence() == end.known().sequence()) {
      return end.isNot(link) ? "; head.json does not name this one" : "; head.json names this one";
    }
    boolean known = !after.isEmpty() && after.stream().allMatch(Link::sound);
    if (!known || number(after) != link.sequence() + 1) {
      return "";
    }
    return after.stream().anyMatch(l -> l.follows(link))
        ? "; the chain goes on from this one"
        : "; the chain does not go on from this one";
  }

  private static String orderFault(Link link, List<Link> before) {
    if (link.sequence() == 1) {
      return link.previous().equals(NONE) ? "" : "is number 1 and yet names a document before it";
    }
    boolean adjacent = !before.isEmpty() && number(before) == link.sequence() - 1;
    boolean known = adjacent && before.stream().allMatch(Link::sound);
    return known && before.stream().noneMatch(link::follows)
        ? "does not follow " + before.get(0).file().getFileName()
        : "";
  }

  private String endFault(Link link) {
    if (end.isNot(link)) {
      return "is not the document that head.json names";
    }
    return link.sequence() > end.newest().sequence() ? "is not known to head.json" : "";
  }
}
