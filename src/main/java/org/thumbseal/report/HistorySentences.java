package org.thumbseal.report;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import org.thumbseal.history.Course;
import org.thumbseal.history.Days;
import org.thumbseal.history.History;
import org.thumbseal.trend.Crossing;
import org.thumbseal.trend.Silence;
import org.thumbseal.trend.Step;
import org.thumbseal.trend.TrendLine;

/** What a course says, in words; the same on pages and in the terminal. */
final class HistorySentences {
  private static final double MONTH = 365.25 / 12;

  /** What may happen within this time is said to be near, days. */
  private static final double NEAR = 31;

  private final History history;
  private final Dates dates;

  HistorySentences(History history, Dates dates) {
    this.history = history;
    this.dates = dates;
  }

  /** All there is to say of one quantity: trend or why none is stated, then the jumps. */
  List<String> of(Course course) {
    List<String> said = new ArrayList<>();
    course.trend().line().ifPresent(line -> said.add(trend(course, line)));
    crossing(course).ifPresent(said::add);
    course.trend().silence().ifPresent(why -> said.add(silence(course, why)));
    for (Step step : course.trend().steps()) {
      said.add(step(course, step));
    }
    return said;
  }

  private String trend(Course course, TrendLine line) {
    double slope = line.slope().value() * MONTH;
    double ends = Math.abs(line.slope().low() * MONTH);
    double other = Math.abs(line.slope().high() * MONTH);
    return Words.text(
        course.worsens() ? "trend.worse" : "trend.better",
        name(course),
        number(Math.abs(slope)),
        course.kind().unit(),
        number(Math.min(ends, other)),
        number(Math.max(ends, other)),
        line.base().tests(),
        dates.day(line.base().from()));
  }

  /** When the limit is reached, where that can be said. */
  Optional<String> crossing(Course course) {
    return course.crossing().map(c -> when(course, c));
  }

  private String when(Course course, Crossing crossing) {
    String limit = Numbers.plain(course.limit().orElseThrow().value()) + " " + course.kind().unit();
    String likeliest = dates.month(crossing.likeliest());
    return isNear(crossing)
        ? Words.text("trend.crossing.now", limit, likeliest)
        : Words.text("trend.crossing", limit, likeliest, dates.month(crossing.earliest()));
  }

  /** The same in short, with the name of the quantity. */
  Optional<String> inShort(Course course) {
    return course
        .crossing()
        .map(
            c ->
                isNear(c)
                    ? Words.text("concern.heading.now", name(course), dates.month(c.likeliest()))
                    : Words.text(
                        "concern.heading",
                        name(course),
                        dates.month(c.likeliest()),
                        dates.month(c.earliest())));
  }

  /** An unexplained jump in short. */
  String inShort(Course course, Step step) {
    return Words.text(
        "concern.jumped", name(course), dates.day(step.before()), dates.day(step.after()));
  }

  private boolean isNear(Crossing crossing) {
    return crossing.earliest() - Days.of(history.today()) < NEAR;
  }

  private String silence(Course course, Silence why) {
    String after = course.trend().steps().isEmpty() ? "" : Words.text("trend.none.after");
    return Words.text("trend.none." + why.name().toLowerCase(Locale.ROOT), name(course), after);
  }

  String step(Course course, Step step) {
    return Words.text(
        step.known() ? "trend.step.known" : "trend.step",
        name(course),
        (step.size() < 0 ? "\u2212" : "+") + number(Math.abs(step.size())),
        course.kind().unit(),
        dates.day(step.before()),
        dates.day(step.after()));
  }

  private static String name(Course course) {
    return Words.text("kind." + course.kind().member());
  }

  private static String number(double value) {
    return Markup.number(value < 0.1 ? "%.3f" : "%.2f", value);
  }
}
