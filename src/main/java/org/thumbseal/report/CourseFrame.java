package org.thumbseal.report;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.thumbseal.history.Course;
import org.thumbseal.history.Days;
import org.thumbseal.history.History;
import org.thumbseal.history.Kind;
import org.thumbseal.history.PastTest;
import org.thumbseal.history.PastTest.Value;
import org.thumbseal.trend.Limit;

/**
 * Where days and values of a course stand in its drawing.
 *
 * @param days from the first test a little into the future
 * @param values so that all values, their U and the limit are on it
 */
record CourseFrame(Scale days, Scale values) {
  /** How far into the future a drawing may go, as a share of what it shows of the past. */
  private static final double AHEAD = 0.6;

  private static final double LEAST_DAYS = 60;

  static CourseFrame of(History history, Course course, Plot.Area area) {
    List<PastTest> dated = history.tests().stream().filter(t -> t.at().isPresent()).toList();
    double today = Days.of(history.today());
    double first = dated.isEmpty() ? today : Days.of(dated.get(0).at().orElseThrow());
    double past = Math.max(LEAST_DAYS, today - first);
    double ahead =
        course.crossing().map(c -> Math.min(c.likeliest() - today + 20, AHEAD * past)).orElse(0.0);
    double margin = 0.02 * past;
    Scale days =
        new Scale(today - past - margin, today + ahead + margin, area.left(), area.right());
    return new CourseFrame(days, values(dated, course, area));
  }

  private static Scale values(List<PastTest> dated, Course course, Plot.Area area) {
    List<Double> shown = new ArrayList<>();
    for (PastTest test : dated) {
      value(test, course.kind())
          .ifPresent(
              v -> {
                shown.add(v.value() - v.expanded());
                shown.add(v.value() + v.expanded());
              });
    }
    course.limit().map(Limit::value).ifPresent(shown::add);
    double low = shown.stream().mapToDouble(v -> v).min().orElse(0);
    double high = shown.stream().mapToDouble(v -> v).max().orElse(1);
    double room = Math.max(0.08 * (high - low), 0.01 * Math.abs(high) + 1e-3);
    return new Scale(Math.max(0, low - room), high + room, area.bottom(), area.top());
  }

  static Optional<Value> value(PastTest test, Kind kind) {
    return Optional.ofNullable(test.values().get(kind));
  }

  double x(PastTest test) {
    return days.at(Days.of(test.at().orElseThrow()));
  }
}
