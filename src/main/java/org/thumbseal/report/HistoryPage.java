package org.thumbseal.report;

import java.time.ZoneId;
import java.util.List;
import org.thumbseal.history.Course;
import org.thumbseal.history.History;
import org.thumbseal.history.PastTest;
import org.thumbseal.history.Pump;

/** The page of one pump over the years; it prints on A4 and loads nothing. */
public final class HistoryPage {
  private final History history;
  private final Dates dates;
  private final HistorySentences sentences;
  private final Markup body = new Markup();

  private HistoryPage(History history, ZoneId zone) {
    this.history = history;
    dates = new Dates(zone);
    sentences = new HistorySentences(history, dates);
  }

  /**
   * Writes it.
   *
   * @param zone whose calendar the dates are of
   */
  public static String html(History history, ZoneId zone) {
    return new HistoryPage(history, zone).html();
  }

  private String html() {
    Pump pump = history.pump();
    body.open("main", "class", "sheet");
    body.element("h1", Words.text("history.title", pump.id()));
    String known = HistoryText.known(pump);
    if (!known.isEmpty()) {
      body.element("p", known, "class", "known");
    }
    long counting = history.tests().stream().filter(PastTest::judges).count();
    body.element("p", Words.text("history.asof", dates.day(history.today()), counting)).line();
    if (counting == 0) {
      body.element("p", Words.text("history.none"), "class", "said");
    }
    history.courses().forEach(this::course);
    if (!history.courses().isEmpty()) {
      key();
    }
    changes();
    tests();
    body.element("p", Words.text("history.honest"), "class", "caution");
    body.element("p", Words.text("caution"), "class", "caution").close().line();
    return PageFrame.page(
        new PageFrame.Head(
            Words.text("history.title", pump.id()),
            "history of " + pump.id(),
            Styles.text("history.css"),
            ""),
        body);
  }

  private void course(Course course) {
    body.open("section").line();
    body.element("h2", Words.text("kind." + course.kind().member()) + ", " + course.kind().unit());
    body.add(CoursePicture.of(history, course)).line().open("ul");
    List<String> said = sentences.of(course);
    String when = sentences.crossing(course).orElse("");
    said.forEach(s -> body.element("li", s, "class", s.equals(when) ? "when" : "said"));
    body.close().close().line();
  }

  private void key() {
    body.open("p", "class", "key");
    for (String shown : List.of("pass", "fail", "inconclusive", "invalid", "void")) {
      body.open("span").add(CourseKey.mark(shown));
      body.text(Words.text("verdict." + shown).toLowerCase(java.util.Locale.ROOT))
          .close()
          .text(" ");
    }
    for (String line : CourseKey.LINES) {
      body.open("span").add(CourseKey.line(line)).text(Words.text("history.key." + line)).close();
      body.text(" ");
    }
    body.close().line();
  }

  private void changes() {
    List<PastTest> changes = HistoryChanges.of(history);
    if (changes.isEmpty()) {
      return;
    }
    body.element("h2", Words.text("history.changes")).open("ol", "class", "changes");
    for (PastTest test : changes) {
      body.element(
          "li",
          dates.day(test.at().orElseThrow()) + ": " + String.join(", ", test.setting().replaced()));
    }
    body.close().line();
  }

  private void tests() {
    if (history.tests().isEmpty()) {
      return;
    }
    body.element("h2", Words.text("history.tests")).open("table", "class", "tests");
    body.open("thead").open("tr");
    HistoryText.columns().forEach(name -> body.element("th", name));
    body.close().close().line().open("tbody").line();
    for (HistoryText.Row row : HistoryText.rows(history, dates)) {
      body.open("tr", "class", row.shown());
      body.element("td", row.date());
      body.open("td")
          .add(VerdictShape.of(row.shown()))
          .text(Words.of("verdict", row.shown()))
          .close();
      row.values().forEach(value -> body.element("td", value, "class", "number"));
      body.element("td", row.remarks()).close().line();
    }
    body.close().close().line();
  }
}
