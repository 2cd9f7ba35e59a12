package org.thumbseal.report;

import java.util.List;
import java.util.Objects;
import org.thumbseal.history.Course;
import org.thumbseal.history.Days;
import org.thumbseal.history.History;
import org.thumbseal.history.PastTest;
import org.thumbseal.trend.Limit;

/** A course of the size of a line of text: the last two years, the limit, the trend. */
final class SmallCourse {
  private static final double WIDTH = 170;
  private static final double HEIGHT = 38;
  private static final double YEARS = 731;

  private final History history;
  private final Course course;
  private final Markup svg = new Markup();

  private SmallCourse(History history, Course course) {
    this.history = history;
    this.course = course;
  }

  static Markup of(History history, Course course) {
    return new SmallCourse(history, course).drawn();
  }

  private Markup drawn() {
    List<PastTest> shown = history.tests().stream().filter(this::isShown).toList();
    double today = Days.of(history.today());
    Scale days = new Scale(today - YEARS, today, 4, WIDTH - 5);
    Scale values = values(shown);
    svg.open("svg", "class", "small", "viewBox", "0 0 " + WIDTH + " " + HEIGHT, "role", "img");
    svg.element(
        "title", Words.text("history.picture", Words.text("kind." + course.kind().member())));
    course.limit().ifPresent(limit -> limit(values.at(limit.value())));
    course
        .trend()
        .line()
        .ifPresent(
            line -> {
              double from = Math.max(days.from(), line.base().from());
              String path =
                  "M" + Markup.at(days.at(from)) + " " + Markup.at(values.inside(line.at(from)));
              path +=
                  "L" + Markup.at(days.at(today)) + " " + Markup.at(values.inside(line.at(today)));
              svg.shape(
                  "path", "d", path, "stroke", "#0b3d78", "stroke-width", "1.4", "fill", "none");
            });
    for (PastTest test : shown) {
      double y = values.at(value(test));
      TestMark.draw(svg, test.outcome().shown(), days.at(Days.of(test.at().orElseThrow())), y, 2);
    }
    return svg.close();
  }

  private boolean isShown(PastTest test) {
    return test.judges()
        && test.values().containsKey(course.kind())
        && test.at().filter(at -> Days.of(at) > Days.of(history.today()) - YEARS).isPresent();
  }

  private double value(PastTest test) {
    return Objects.requireNonNull(test.values().get(course.kind())).value();
  }

  private Scale values(List<PastTest> shown) {
    double[] all =
        java.util.stream.DoubleStream.concat(
                shown.stream().mapToDouble(this::value),
                course.limit().map(Limit::value).stream().mapToDouble(v -> v))
            .toArray();
    double low = java.util.Arrays.stream(all).min().orElse(0);
    double high = java.util.Arrays.stream(all).max().orElse(1);
    double room = 0.02 * Math.abs(high) + 1e-6;
    return new Scale(low - room, high + room, HEIGHT - 3, 3);
  }

  private void limit(double y) {
    svg.shape(
        "path",
        "d",
        "M0 " + Markup.at(y) + "H" + WIDTH,
        "stroke",
        "#7a1010",
        "stroke-width",
        "1.2",
        "stroke-dasharray",
        "7 3");
  }
}
