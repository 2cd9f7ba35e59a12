package org.thumbseal.report;

import java.time.LocalDate;
import java.time.ZoneOffset;
import org.thumbseal.history.Course;
import org.thumbseal.history.Days;
import org.thumbseal.history.History;
import org.thumbseal.history.PastTest;
import org.thumbseal.trend.Crossing;
import org.thumbseal.trend.Limit;
import org.thumbseal.trend.Step;
import org.thumbseal.trend.TrendLine;

/** One quantity over the years: values with U, limit, trend with its band, steps, parts. */
final class CoursePicture {
  private static final double WIDTH = 760;
  private static final double HEIGHT = 205;
  private static final Plot.Area AREA = new Plot.Area(46, 18, WIDTH - 8, HEIGHT - 22);
  private static final String INK = "#111111";
  private static final String LIMIT = "#7a1010";
  private static final String TREND = "#0b3d78";

  private final History history;
  private final Course course;
  private final CourseFrame frame;
  private final Markup svg = new Markup();

  private CoursePicture(History history, Course course) {
    this.history = history;
    this.course = course;
    frame = CourseFrame.of(history, course, AREA);
  }

  static Markup of(History history, Course course) {
    return new CoursePicture(history, course).drawn();
  }

  private Markup drawn() {
    svg.open("svg", "class", "course", "viewBox", "0 0 " + WIDTH + " " + HEIGHT, "role", "img");
    svg.element(
        "title", Words.text("history.picture", Words.text("kind." + course.kind().member())));
    grid();
    months();
    course.trend().line().ifPresent(this::band);
    course.limit().ifPresent(this::limit);
    today();
    course.trend().steps().forEach(this::step);
    changes();
    history.tests().stream().filter(t -> t.at().isPresent()).forEach(this::test);
    course.trend().line().ifPresent(this::line);
    course.crossing().ifPresent(this::crossing);
    return svg.close();
  }

  private void grid() {
    double step = frame.values().step(5);
    for (double v = Math.ceil(frame.values().from() / step) * step;
        v <= frame.values().to();
        v += step) {
      double y = frame.values().at(v);
      path(from(AREA.left(), y) + "H" + Markup.at(AREA.right()), "#dddddd", "0.7");
      text(Numbers.plain(v), AREA.left() - 5, y + 3.5, "end");
    }
    path(
        from(AREA.left(), AREA.top())
            + "V"
            + Markup.at(AREA.bottom())
            + "H"
            + Markup.at(AREA.right()),
        INK,
        "1");
  }

  /** A mark for the first of each month, words where there is room. */
  private void months() {
    LocalDate month =
        Days.instant(frame.days().from()).atZone(ZoneOffset.UTC).toLocalDate().withDayOfMonth(1);
    double monthWidth = 30.4 * (AREA.width() / (frame.days().to() - frame.days().from()));
    int every = monthWidth > 52 ? 1 : monthWidth > 18 ? 3 : monthWidth > 9 ? 6 : 12;
    for (LocalDate m = month.plusMonths(1);
        m.toEpochDay() < frame.days().to();
        m = m.plusMonths(1)) {
      double x = frame.days().at((double) m.toEpochDay());
      boolean named = (m.getMonthValue() - 1) % every == 0;
      path(from(x, AREA.bottom()) + "v" + (named ? 6 : 3), INK, named ? "1.2" : "0.6");
      if (named && x < AREA.right() - 20) {
        text(
            Words.text("month." + m.getMonthValue()) + " " + m.getYear(),
            x,
            AREA.bottom() + 18,
            "middle");
      }
    }
  }

  private void band(TrendLine line) {
    double first = line.base().from();
    double last = frame.days().to();
    StringBuilder path = new StringBuilder();
    for (int i = 0; i <= 20; i++) {
      double day = first + (last - first) * i / 20;
      path.append(i == 0 ? "M" : "L").append(point(day, line.highest(day)));
    }
    for (int i = 20; i >= 0; i--) {
      double day = first + (last - first) * i / 20;
      path.append("L").append(point(day, line.lowest(day)));
    }
    svg.shape("path", "d", path + "Z", "fill", "#d9d9d9", "stroke", "none");
  }

  private void line(TrendLine line) {
    double now = Math.max(line.base().to(), Days.of(history.today()));
    path(
        "M"
            + point(line.base().from(), line.at(line.base().from()))
            + "L"
            + point(now, line.at(now)),
        TREND,
        "2.2");
    dashed(
        "M" + point(now, line.at(now)) + "L" + point(frame.days().to(), line.at(frame.days().to())),
        TREND,
        "6 4");
  }

  private String point(double day, double value) {
    return Markup.at(frame.days().inside(day)) + " " + Markup.at(frame.values().inside(value));
  }

  /** Where it lay at each test, for criteria and altitude may change; then as it is. */
  private void limit(Limit limit) {
    StringBuilder path = new StringBuilder();
    for (PastTest test : history.tests()) {
      Double then = test.setting().limits().get(course.kind());
      if (test.at().isPresent() && then != null) {
        String y = Markup.at(frame.values().inside(then));
        path.append(path.isEmpty() ? from(AREA.left(), frame.values().inside(then)) : "V" + y);
        path.append("H").append(Markup.at(frame.x(test)));
      }
    }
    double y = frame.values().inside(limit.value());
    path.append(path.isEmpty() ? from(AREA.left(), y) : "V" + Markup.at(y));
    svg.shape(
        "path",
        "d",
        path + "H" + Markup.at(AREA.right()),
        "fill",
        "none",
        "stroke",
        LIMIT,
        "stroke-width",
        "1.8",
        "stroke-dasharray",
        "10 3");
    String side = limit.side() == Limit.Side.ABOVE ? "at-most" : "at-least";
    text(
        Words.text("history.limit." + side, Numbers.plain(limit.value()), course.kind().unit()),
        AREA.left() + 5,
        y - 4,
        "start");
  }

  private void today() {
    double x = frame.days().at(Days.of(history.today()));
    if (course.crossing().isPresent()) {
      dashed(from(x, AREA.top()) + "V" + Markup.at(AREA.bottom()), "#777777", "1 3");
      text(Words.text("history.today"), x + 3, AREA.top() + 9, "start");
    }
  }

  /** A zigzag between the two tests. */
  private void step(Step step) {
    double x = frame.days().at((step.before() + step.after()) / 2);
    StringBuilder path = new StringBuilder(from(x, AREA.top() + 2));
    double y = AREA.top() + 2;
    for (int i = 0; y < AREA.bottom() - 8; i++, y += 8) {
      path.append("l").append(i % 2 == 0 ? "4 8" : "-4 8");
    }
    path(path.toString(), INK, "1.1");
  }

  /** A stroke with its number in the list below. */
  private void changes() {
    int number = 0;
    for (PastTest test : HistoryChanges.of(history)) {
      double x = frame.x(test) - 4;
      path(from(x, AREA.top() - 3) + "V" + Markup.at(AREA.bottom()), INK, "0.7");
      svg.shape("path", "d", from(x - 4, AREA.bottom()) + "h8l-4 -7Z", "fill", INK);
      text(Integer.toString(++number), x, AREA.top() - 6, "middle");
    }
  }

  private void test(PastTest test) {
    CourseFrame.value(test, course.kind())
        .ifPresent(
            value -> {
              double x = frame.x(test);
              double u = value.expanded();
              uncertainty(
                  x, frame.values().at(value.value() - u), frame.values().at(value.value() + u));
              double y = frame.values().at(value.value());
              TestMark.draw(svg, test.outcome().shown(), x, y, 3.4);
              if (test.outcome().corrected()) {
                svg.shape(
                    "circle",
                    "cx",
                    Markup.at(x),
                    "cy",
                    Markup.at(y),
                    "r",
                    "7",
                    "fill",
                    "none",
                    "stroke",
                    INK);
              }
            });
  }

  private void uncertainty(double x, double low, double high) {
    if (low - high > 1) {
      path(
          from(x, low)
              + "V"
              + Markup.at(high)
              + from(x - 2.5, low)
              + "h5"
              + from(x - 2.5, high)
              + "h5",
          "#555555",
          "0.9");
    }
  }

  /** From the earliest day to the likeliest, on the limit. */
  private void crossing(Crossing crossing) {
    double y = frame.values().inside(course.limit().orElseThrow().value());
    double early = frame.days().inside(crossing.earliest());
    double likely = frame.days().inside(crossing.likeliest());
    path(from(early, y) + "H" + Markup.at(likely), INK, "4");
    path(from(early, y - 7) + "v14", INK, "2");
    boolean shown = crossing.likeliest() < frame.days().to();
    svg.shape(
        "path", "d", from(likely - 5, y - 9) + (shown ? "h10l-5 9Z" : "l10 9l-10 9Z"), "fill", INK);
  }

  private void path(String path, String colour, String width) {
    svg.shape("path", "d", path, "fill", "none", "stroke", colour, "stroke-width", width);
  }

  private void dashed(String path, String colour, String dashes) {
    svg.shape(
        "path",
        "d",
        path,
        "fill",
        "none",
        "stroke",
        colour,
        "stroke-width",
        "1.6",
        "stroke-dasharray",
        dashes);
  }

  private void text(String text, double x, double y, String anchor) {
    svg.element(
        "text",
        text,
        "x",
        Markup.at(x),
        "y",
        Markup.at(y),
        "text-anchor",
        anchor,
        "font-size",
        "10.5");
  }

  private static String from(double x, double y) {
    return "M" + Markup.at(x) + " " + Markup.at(y);
  }
}
