package org.thumbseal.history;

import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import org.thumbseal.trend.Crossing;
import org.thumbseal.trend.Limit;
import org.thumbseal.trend.Reading;
import org.thumbseal.trend.Series;
import org.thumbseal.trend.Trend;
import org.thumbseal.trend.TrendRules;

/**
 * All tests of a pump and what they say today.
 *
 * @param pump whose
 * @param tests in the order of time, those without a date first
 * @param courses of the quantities that were ever measured
 * @param today when this is said
 */
public record History(Pump pump, List<PastTest> tests, List<Course> courses, Instant today) {
  private static final Comparator<PastTest> BY_TIME =
      Comparator.comparing((PastTest test) -> test.at().orElse(Instant.MIN))
          .thenComparing(PastTest::id);

  private static final Duration RECENT = Duration.ofDays(731);

  /** Keeps copies. */
  public History {
    tests = List.copyOf(tests);
    courses = List.copyOf(courses);
  }

  /** Puts the tests in order, leaves out those of later days, and works out what they say. */
  public static History of(Pump pump, List<PastTest> tests, Instant today) {
    List<PastTest> ordered =
        tests.stream()
            .filter(test -> test.at().filter(at -> at.isAfter(today)).isEmpty())
            .sorted(BY_TIME)
            .toList();
    List<Course> courses = new ArrayList<>();
    for (Kind kind : Kind.values()) {
      if (ordered.stream().anyMatch(test -> test.values().containsKey(kind))) {
        courses.add(course(kind, ordered, today));
      }
    }
    return new History(pump, ordered, courses, today);
  }

  private static Course course(Kind kind, List<PastTest> tests, Instant today) {
    List<Reading> readings = new ArrayList<>();
    for (PastTest test : tests) {
      test.counted(kind).ifPresent(value -> readings.add(reading(test, value)));
    }
    Trend trend = Trend.of(new Series(readings, changes(tests)), TrendRules.USUAL);
    Optional<Limit> limit = limit(kind, tests);
    Optional<Crossing> crossing =
        trend
            .line()
            .flatMap(
                line -> limit.flatMap(l -> Crossing.of(line, l, Days.of(today), TrendRules.USUAL)));
    boolean failed = last(tests).filter(History::failed).isPresent();
    return new Course(kind, limit, trend, failed ? Optional.empty() : crossing);
  }

  private static Reading reading(PastTest test, PastTest.Value value) {
    double common = value.expanded() > 0 ? value.expanded() : Double.POSITIVE_INFINITY;
    return new Reading(day(test), value.value(), test.setting().sensor(), common);
  }

  private static double day(PastTest test) {
    return Days.of(test.at().orElseThrow());
  }

  /** When a part was replaced, or the jar was another one than the last that was named. */
  private static List<Double> changes(List<PastTest> tests) {
    List<Double> changes = new ArrayList<>();
    Optional<Double> jar = Optional.empty();
    for (PastTest test : tests) {
      if (test.at().isPresent() && test.outcome().voided().isEmpty()) {
        Optional<Double> now = test.setting().jar();
        boolean other = jar.isPresent() && now.isPresent() && !jar.equals(now);
        if (other || !test.setting().replaced().isEmpty()) {
          changes.add(day(test));
        }
        jar = now.isPresent() ? now : jar;
      }
    }
    return changes;
  }

  private static Optional<Limit> limit(Kind kind, List<PastTest> tests) {
    return last(tests)
        .map(test -> test.setting().limits().get(kind))
        .map(value -> new Limit(value, kind.bad()));
  }

  private static Optional<PastTest> last(List<PastTest> tests) {
    return tests.stream().filter(PastTest::judges).reduce((earlier, later) -> later);
  }

  private static boolean failed(PastTest test) {
    return test.outcome().verdict().equals("fail");
  }

  /**
   * The same with no more than the tests of the last two years, and the last that says something;
   * what they all say stays.
   */
  public History recent() {
    Instant since = today.minus(RECENT);
    Optional<PastTest> last = last();
    List<PastTest> few =
        tests.stream()
            .filter(
                t ->
                    t.at().filter(since::isBefore).isPresent()
                        || last.filter(t::equals).isPresent())
            .toList();
    return new History(pump, few, courses, today);
  }

  /** The last test that says something about the pump. */
  public Optional<PastTest> last() {
    return last(tests);
  }

  /** The course of a kind, if it was ever measured. */
  public Optional<Course> course(Kind kind) {
    return courses.stream().filter(course -> course.kind() == kind).findFirst();
  }

  /** The limit that is reached first. */
  public Optional<Course> soonest() {
    return courses.stream()
        .filter(course -> course.crossing().isPresent())
        .min(Comparator.comparingDouble(c -> c.crossing().orElseThrow().earliest()));
  }
}
