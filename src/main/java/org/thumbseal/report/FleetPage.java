package org.thumbseal.report;

import java.time.Instant;
import java.time.ZoneId;
import java.util.List;
import java.util.Locale;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.thumbseal.care.Cause;
import org.thumbseal.care.Due;
import org.thumbseal.history.Concern;
import org.thumbseal.history.Course;
import org.thumbseal.history.History;
import org.thumbseal.history.Kind;
import org.thumbseal.history.Outlook;
import org.thumbseal.history.PastTest;

/** All pumps on one page, one line each, worst first; it prints on A4 and loads nothing. */
public final class FleetPage {
  private final List<Outlook> outlooks;
  private final Instant today;
  private final Dates dates;
  private final Markup body = new Markup();

  private FleetPage(List<Outlook> outlooks, Instant today, ZoneId zone) {
    this.outlooks = outlooks;
    this.today = today;
    dates = new Dates(zone);
  }

  /**
   * Writes it.
   *
   * @param outlooks worst first
   * @param zone whose calendar the dates are of
   */
  public static String html(List<Outlook> outlooks, Instant today, ZoneId zone) {
    return new FleetPage(outlooks, today, zone).html();
  }

  /** The same as text: a line for each pump. */
  public static List<String> lines(List<Outlook> outlooks, ZoneId zone) {
    Dates dates = new Dates(zone);
    TextTable table = new TextTable(TextTable.Side.LEFT, TextTable.Side.LEFT, TextTable.Side.LEFT);
    for (Outlook outlook : outlooks) {
      String last = last(outlook, dates);
      String why = (why(outlook, dates) + " " + works(outlook)).strip();
      table.row(outlook.history().pump().id(), last, why);
    }
    return Stream.concat(table.lines().stream().map(String::strip), Stream.of(counts(outlooks)))
        .toList();
  }

  private String html() {
    body.open("main", "class", "sheet").element("h1", Words.text("fleet.title"));
    body.element("p", Words.text("fleet.asof", dates.day(today), outlooks.size()));
    body.element("p", counts(outlooks), "class", "counts").line();
    body.open("table", "class", "fleet").open("thead").open("tr");
    for (String column : List.of("pump", "last", "rise", "maximum", "concern")) {
      body.element("th", Words.text("fleet.col." + column));
    }
    body.close().close().line().open("tbody").line();
    outlooks.forEach(this::row);
    body.close().close().line();
    body.element("p", Words.text("fleet.scale"), "class", "key");
    body.element("p", Words.text("history.honest"), "class", "caution");
    body.element("p", Words.text("caution"), "class", "caution").close().line();
    return PageFrame.page(
        new PageFrame.Head(
            Words.text("fleet.title"), "pumps at a glance", Styles.text("history.css"), ""),
        body);
  }

  private void row(Outlook outlook) {
    History history = outlook.history();
    body.open("tr", "class", outlook.concern().name().toLowerCase(Locale.ROOT));
    body.open("td").element("b", history.pump().id());
    body.element("small", HistoryText.known(history.pump())).close();
    body.open("td");
    history.last().ifPresent(test -> body.add(VerdictShape.of(test.outcome().shown())));
    body.text(last(outlook, dates)).close();
    small(history, Kind.RISE_TIME);
    small(history, Kind.MAXIMUM);
    body.open("td", "class", "why").text(why(outlook, dates));
    String works = works(outlook);
    if (!works.isEmpty()) {
      body.element("small", works);
    }
    body.close().close().line();
  }

  private void small(History history, Kind kind) {
    String name = Words.text("fleet.col." + (kind == Kind.RISE_TIME ? "rise" : "maximum"));
    body.open("td", "class", "curve", "data-name", name);
    history.course(kind).ifPresent(course -> body.add(SmallCourse.of(history, course)));
    body.close();
  }

  private static String last(Outlook outlook, Dates dates) {
    return outlook
        .history()
        .last()
        .flatMap(PastTest::at)
        .map(dates::day)
        .orElseGet(
            () -> Words.text(outlook.history().last().isPresent() ? "undated" : "fleet.never"));
  }

  private static String why(Outlook outlook, Dates dates) {
    String code = "concern." + outlook.concern().name().toLowerCase(Locale.ROOT);
    HistorySentences sentences = new HistorySentences(outlook.history(), dates);
    return switch (outlook.concern()) {
      case FAILED, UNDECIDED -> Words.text(code, last(outlook, dates)) + repaired(outlook);
      case OVERDUE -> late(outlook.overdueTest().orElseThrow()) + also(outlook, sentences);
      case HEADING -> also(outlook, sentences).strip();
      case JUMPED -> jump(outlook.history(), sentences);
      case WORSENING -> Words.text(code, worsening(outlook.history()));
      default -> Words.text(code);
    };
  }

  /** Since when its test is overdue, and why where that is not its term alone. */
  private static String late(Due test) {
    String day = Dates.day(test.term().on());
    return test.term().cause() == Cause.AFTER_REPAIR
        ? Words.text("fleet.after-repair", day)
        : Words.text("concern.overdue", day);
  }

  private static String repaired(Outlook outlook) {
    return outlook
        .overdueTest()
        .filter(test -> test.term().cause() == Cause.AFTER_REPAIR)
        .map(test -> " " + late(test))
        .orElse("");
  }

  private static String works(Outlook outlook) {
    List<Due> works = outlook.overdueWorks();
    return works.isEmpty()
        ? ""
        : Words.text(
            "fleet.works", works.stream().map(FleetPage::work).collect(Collectors.joining("; ")));
  }

  private static String work(Due due) {
    return due.term().cause() == Cause.NEVER_DONE
        ? Words.text("fleet.work.never", DueWords.work(due))
        : Words.text("fleet.work", DueWords.work(due), Dates.day(due.term().on()));
  }

  private static String also(Outlook outlook, HistorySentences sentences) {
    return outlook.history().soonest().flatMap(sentences::inShort).map(s -> " " + s).orElse("");
  }

  private static String jump(History history, HistorySentences sentences) {
    return history.courses().stream()
        .flatMap(c -> c.unexplained().map(step -> sentences.inShort(c, step)).stream())
        .findFirst()
        .orElse("");
  }

  private static String worsening(History history) {
    return history.courses().stream()
        .filter(Course::worsens)
        .map(c -> Words.text("kind." + c.kind().member()))
        .collect(Collectors.joining(", "));
  }

  private static String counts(List<Outlook> outlooks) {
    return Stream.of(Concern.values())
        .filter(c -> outlooks.stream().anyMatch(o -> o.concern() == c))
        .map(
            c ->
                outlooks.stream().filter(o -> o.concern() == c).count()
                    + " "
                    + Words.text("fleet.count." + c.name().toLowerCase(Locale.ROOT)))
        .collect(Collectors.joining(" \u00b7 "));
  }
}
