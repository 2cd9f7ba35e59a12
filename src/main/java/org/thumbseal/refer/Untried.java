package org.thumbseal.refer;

import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.thumbseal.visit.CheckItem;

/**
 * What of the usual list no record since the last good test tells of. Common practice, no published
 * source.
 *
 * @param since day of the last good test; absent where there was none
 * @param unseen items that nobody looked at
 * @param unreplaced parts that wear and were not replaced
 * @param steps what else was not done
 */
public record Untried(
    Optional<LocalDate> since, List<String> unseen, List<String> unreplaced, List<Step> steps) {
  /** Parts that people at the hospital put in themselves. */
  private static final List<String> WEARING =
      Stream.of(CheckItem.GASKET, CheckItem.JAR, CheckItem.TUBING, CheckItem.FILTER)
          .map(CheckItem::code)
          .toList();

  /** Keeps copies. */
  public Untried {
    unseen = List.copyOf(unseen);
    unreplaced = List.copyOf(unreplaced);
    steps = List.copyOf(steps);
  }

  /** What else there is to try. */
  public enum Step {
    /** A test after the one that was not good. */
    REPEATED,
    /** The search for a leak. */
    LEAK_SEARCH,
    /** The questions of the trouble guide. */
    TROUBLE_GUIDE
  }

  /** Looks through the records of a pump. */
  public static Untried of(Referral referral) {
    List<ReferredTest> tests = referral.sinceGood();
    Optional<LocalDate> since =
        referral
            .lastGood()
            .flatMap(ReferredTest::at)
            .map(at -> LocalDate.ofInstant(at, referral.subject().zone()));
    Set<String> seen = items(tests, false);
    Set<String> replaced = items(tests, true);
    return new Untried(
        since,
        Stream.of(CheckItem.values()).map(CheckItem::code).filter(i -> !seen.contains(i)).toList(),
        WEARING.stream().filter(item -> !replaced.contains(item)).toList(),
        Stream.of(Step.values()).filter(step -> !isDone(step, referral, since)).toList());
  }

  private static Set<String> items(List<ReferredTest> tests, boolean replaced) {
    return tests.stream()
        .flatMap(test -> test.seen().checks().stream())
        .filter(check -> !replaced || check.isReplaced())
        .map(ReferredTest.Looked::item)
        .collect(Collectors.toSet());
  }

  private static boolean isDone(Step step, Referral referral, Optional<LocalDate> since) {
    return switch (step) {
      case REPEATED -> referral.sinceGood().stream().filter(ReferredTest::judges).count() != 1;
      case LEAK_SEARCH -> isSince(referral.last(Deed.LEAK_SEARCH), since);
      case TROUBLE_GUIDE -> isSince(referral.last(Deed.TROUBLE), since);
    };
  }

  private static boolean isSince(Optional<Deed> deed, Optional<LocalDate> since) {
    return deed.filter(d -> since.map(day -> !d.on().isBefore(day)).orElse(true)).isPresent();
  }
}
