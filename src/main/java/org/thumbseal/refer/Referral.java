package org.thumbseal.refer;

import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/**
 * All that is known of a pump that is handed on.
 *
 * @param subject which pump, and why
 * @param tests in the order of time, those without a date first
 * @param deeds in the order of their days
 */
public record Referral(Subject subject, List<ReferredTest> tests, List<Deed> deeds) {
  /** How many tests are drawn at most: they stand side by side. */
  public static final int MOST_DRAWN = 4;

  /** Without a failure, so many good ones are enough. */
  private static final int MOST_GOOD = 2;

  /** Keeps copies. */
  public Referral {
    tests = List.copyOf(tests);
    deeds = List.copyOf(deeds);
  }

  /**
   * Which pump, and why.
   *
   * @param asset its id
   * @param register what the list of pumps says of it, which nobody sealed
   * @param complaint in the words of whoever hands it on
   * @param made when the sheet is made
   * @param zone whose calendar counts
   */
  public record Subject(
      String asset, List<Fact> register, Optional<String> complaint, Instant made, ZoneId zone) {
    /** Keeps a copy. */
    public Subject {
      register = List.copyOf(register);
    }
  }

  /**
   * Something of the list of pumps.
   *
   * @param name of the column
   * @param value one line
   */
  public record Fact(String name, String value) {}

  /**
   * An item as it was last seen.
   *
   * @param looked how it was found
   * @param at when; absent where the recording had no date
   */
  public record LastLook(ReferredTest.Looked looked, Optional<Instant> at) {}

  /** The last test that was good. */
  public Optional<ReferredTest> lastGood() {
    return tests.stream().filter(ReferredTest::isGood).reduce((earlier, later) -> later);
  }

  /** The last test that says something about the pump. */
  public Optional<ReferredTest> last() {
    return tests.stream().filter(ReferredTest::judges).reduce((earlier, later) -> later);
  }

  /**
   * Tests whose curves are shown, in the order of time: the last ones that were not good beside the
   * last good one; where none was bad, the last two good ones.
   */
  public List<ReferredTest> drawn() {
    List<ReferredTest> good = tests.stream().filter(ReferredTest::isGood).toList();
    List<ReferredTest> bad = tests.stream().filter(t -> t.judges() && !t.isGood()).toList();
    int goods = Math.min(good.size(), bad.isEmpty() ? MOST_GOOD : 1);
    List<ReferredTest> shown = new ArrayList<>(good.subList(good.size() - goods, good.size()));
    shown.addAll(bad.subList(Math.max(0, bad.size() - (MOST_DRAWN - goods)), bad.size()));
    return tests.stream().filter(shown::contains).toList();
  }

  /** Tests that count and came after the last good one; all where there was none. */
  public List<ReferredTest> sinceGood() {
    int from = lastGood().map(good -> tests.indexOf(good) + 1).orElse(0);
    return tests.subList(from, tests.size()).stream()
        .filter(test -> test.outcome().voided().isEmpty())
        .toList();
  }

  /** Of each item that was ever looked at the last look, in the order in which items came up. */
  public Map<String, LastLook> lastLooks() {
    Map<String, LastLook> looks = new LinkedHashMap<>();
    for (ReferredTest test : tests) {
      if (test.outcome().voided().isEmpty()) {
        test.seen().checks().forEach(c -> looks.put(c.item(), new LastLook(c, test.at())));
      }
    }
    return looks;
  }

  /** Parts that were put in, the last first. */
  public List<LastLook> replaced() {
    List<LastLook> parts = new ArrayList<>();
    for (ReferredTest test : tests) {
      if (test.outcome().voided().isEmpty()) {
        test.seen().checks().stream()
            .filter(ReferredTest.Looked::isReplaced)
            .forEach(check -> parts.add(0, new LastLook(check, test.at())));
      }
    }
    return parts;
  }

  /** The last deed of a kind. */
  public Optional<Deed> last(String work) {
    return deeds.stream().filter(d -> d.work().equals(work)).reduce((earlier, later) -> later);
  }

  /** Of each kind of deed the last, in the order of their days. */
  public List<Deed> lastDeeds() {
    return deeds.stream().filter(d -> last(d.work()).filter(d::equals).isPresent()).toList();
  }

  /** The day since which it is infectious by the record, if it is. */
  public Optional<LocalDate> infectiousSince() {
    Optional<LocalDate> cleaned = last(Deed.STERILISED).map(Deed::on);
    return last(Deed.INFECTIOUS)
        .map(Deed::on)
        .filter(day -> cleaned.isEmpty() || cleaned.get().isBefore(day));
  }
}
