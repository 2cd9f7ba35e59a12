package org.thumbseal.report;

import java.time.LocalDate;
import java.util.List;
import org.thumbseal.care.Due;
import org.thumbseal.care.Round;
import org.thumbseal.care.Urgency;

/** What is due as a page to print and take along: place by place, with a box to tick. */
public final class RoundPage {
  private static final List<Urgency> COUNTED =
      List.of(Urgency.OVERDUE, Urgency.THIS_WEEK, Urgency.THIS_MONTH);

  private RoundPage() {}

  /** The page, complete in itself. */
  public static String of(Round round, LocalDate today) {
    String title = Words.text("round.title", today);
    Markup body = new Markup().open("main");
    body.element("h1", title).line().open("p", "class", "counts");
    COUNTED.forEach(urgency -> count(body, round, urgency));
    body.close().line();
    if (round.stops().isEmpty()) {
      body.element("p", Words.text("round.nothing")).line();
    }
    round.stops().forEach(stop -> stop(body, stop, today));
    body.element("p", Words.text("round.caution"), "class", "caution").line();
    body.element("p", Words.text("round.terms")).close().line();
    return PageFrame.page(
        new PageFrame.Head(title, "what is due", Styles.text("round.css"), ""), body);
  }

  private static void count(Markup body, Round round, Urgency urgency) {
    body.open("span", "class", code(urgency)).add(UrgencyShape.of(urgency));
    body.element("b", Integer.toString(round.count(urgency)));
    body.text(" " + Words.of("urgency", code(urgency))).close().text(" ");
  }

  private static void stop(Markup body, Round.Stop stop, LocalDate today) {
    String place = stop.location().isEmpty() ? Words.text("round.nowhere") : stop.location();
    body.open("section").element("h2", place).line();
    body.open("table").line().open("tbody").line();
    stop.pumps().forEach(visited -> pump(body, visited, today));
    body.close().close().close().line();
  }

  private static void pump(Markup body, Round.Visited visited, LocalDate today) {
    int rows = visited.dues().size();
    for (int i = 0; i < rows; i++) {
      Due due = visited.dues().get(i);
      body.open("tr", "class", i == 0 ? "first" : "more");
      if (i == 0) {
        body.open("th", "scope", "rowgroup", "rowspan", Integer.toString(rows));
        body.element("b", visited.pump().id()).element("small", visited.pump().description());
        body.close();
      }
      body.open("td", "class", code(due.urgency())).add(UrgencyShape.of(due.urgency()));
      body.text(Words.of("urgency", code(due.urgency()))).close();
      body.element("td", Words.of("work", due.work().code()));
      body.open("td").element("b", due.term().on().toString());
      body.element("small", DueWords.why(due, today)).close();
      body.open("td", "class", "box").element("span", "", "class", "tick").close();
      body.close().line();
    }
  }

  private static String code(Urgency urgency) {
    return DueWords.code(urgency);
  }
}
