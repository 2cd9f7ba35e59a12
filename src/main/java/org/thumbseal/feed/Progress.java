package org.thumbseal.feed;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;

/**
 * How far the other side has acknowledged, chain by chain.
 *
 * @param upTo by key, the number up to which all is settled but for the gaps
 * @param gaps what was passed over below that
 */
record Progress(Map<String, Long> upTo, List<Gap> gaps) {
  /** Nothing was sent yet. */
  static final Progress NONE = new Progress(Map.of(), List.of());

  /** More than these are of a directory from which somebody takes files at random. */
  private static final int MOST_GAPS = 1000;

  /** Keeps copies. */
  Progress {
    upTo = Map.copyOf(upTo);
    gaps = List.copyOf(gaps);
  }

  /** The number up to which the chain of this key is settled. */
  long upTo(String kid) {
    return upTo.getOrDefault(kid, 0L);
  }

  /** Whether a document is still to be sent: beyond what is settled, or not there before. */
  boolean wants(String kid, long sequence) {
    return sequence > upTo(kid)
        || gaps.stream().anyMatch(gap -> gap.isMissing() && gap.holds(kid, sequence));
  }

  /** How many documents lie beyond what is settled, where the chains end like this. */
  long behind(Map<String, Long> ends) {
    return ends.entrySet().stream()
        .mapToLong(end -> Math.max(0, end.getValue() - upTo(end.getKey())))
        .sum();
  }

  /** Those that the other side refused. */
  List<Gap> refused() {
    return gaps.stream().filter(gap -> !gap.isMissing()).toList();
  }

  boolean hasMissing() {
    return gaps.stream().anyMatch(Gap::isMissing);
  }

  /** One was acknowledged; those before it that were not there stay as a gap. */
  Progress acknowledged(String kid, long sequence) {
    List<Gap> left = without(kid, sequence);
    return sequence > upTo(kid)
        ? new Progress(moved(kid, sequence), added(left, before(kid, sequence)))
        : new Progress(upTo, left);
  }

  /** One was refused for good: it is put aside, and the others go on. */
  Progress refused(String kid, long sequence, String why) {
    Progress passed = acknowledged(kid, sequence);
    return new Progress(passed.upTo, added(passed.gaps, new Gap(kid, sequence, sequence, why)));
  }

  /** All that was found up to these ends is settled; what is left was not there. */
  Progress lookedThrough(Map<String, Long> ends) {
    Progress all = this;
    for (Map.Entry<String, Long> end : ends.entrySet()) {
      String kid = end.getKey();
      if (end.getValue() > all.upTo(kid)) {
        List<Gap> gaps = added(all.gaps, all.before(kid, end.getValue() + 1));
        all = new Progress(all.moved(kid, end.getValue()), gaps);
      }
    }
    return all;
  }

  /** What was refused counts as not sent yet. */
  Progress again() {
    return new Progress(
        upTo, gaps.stream().map(gap -> new Gap(gap.kid(), gap.from(), gap.to(), "")).toList());
  }

  private Gap before(String kid, long sequence) {
    return new Gap(kid, upTo(kid) + 1, sequence - 1, "");
  }

  private Map<String, Long> moved(String kid, long sequence) {
    Map<String, Long> moved = new TreeMap<>(upTo);
    moved.put(kid, sequence);
    return moved;
  }

  private static List<Gap> added(List<Gap> gaps, Gap gap) {
    if (gap.documents() < 1) {
      return gaps;
    }
    List<Gap> more = new ArrayList<>(gaps);
    more.add(gap);
    if (more.size() > MOST_GAPS) {
      more.stream().filter(Gap::isMissing).findFirst().ifPresent(more::remove);
    }
    return more;
  }

  private List<Gap> without(String kid, long sequence) {
    List<Gap> left = gaps;
    for (Gap gap : gaps) {
      if (gap.holds(kid, sequence)) {
        List<Gap> others = new ArrayList<>(left);
        others.remove(gap);
        left = added(others, new Gap(kid, gap.from(), sequence - 1, gap.why()));
        left = added(left, new Gap(kid, sequence + 1, gap.to(), gap.why()));
      }
    }
    return left;
  }
}
