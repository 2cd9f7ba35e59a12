package org.thumbseal.report;

import java.util.List;

/** The verdict, the pump and the time: what is to be read from an arm's length. */
final class Headline {
  /** Names beyond are written smaller. */
  private static final int LONG = 40;

  /** More corrections of one result are rare; the last ones hold. */
  private static final int MOST = 3;

  private Headline() {}

  /** The corrections that are told, the newest of them. */
  static List<String> shown(Report report) {
    List<String> all = report.corrections();
    return all.subList(Math.max(0, all.size() - MOST), all.size());
  }

  static void write(Markup body, Report report) {
    String shown = report.shown();
    body.open("header", "class", "head " + shown).add(VerdictShape.of(shown));
    body.open("div", "class", "verdict");
    body.element("h1", Words.of("verdict", shown));
    body.element("p", Words.of("verdict.says", shown)).close().line();
    body.open("div", "class", "whose");
    boolean longName = report.asset().length() > LONG;
    body.element("p", report.asset(), "class", longName ? "asset long" : "asset");
    body.element("p", UtcTime.text(report.document()).orElseGet(() -> Words.text("undated")));
    body.close().close().line();
    voided(body, report);
    standing(body, report);
  }

  private static void voided(Markup body, Report report) {
    report
        .standing()
        .voided()
        .ifPresent(
            why -> {
              body.open("p", "class", "voided").element("b", Words.text("void.banner"));
              body.text(" " + Words.text("void.why", Words.of("verdict", report.verdict()), why));
              body.close().line();
            });
  }

  private static void standing(Markup body, Report report) {
    report.standing().note().ifPresent(note -> said(body, Words.text("note"), note));
    shown(report).forEach(line -> body.element("p", line, "class", "said").line());
  }

  private static void said(Markup body, String lead, String text) {
    body.open("p", "class", "said").element("b", lead).text(" ").text(text).close().line();
  }
}
