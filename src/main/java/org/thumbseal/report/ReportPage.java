package org.thumbseal.report;

/**
 * One result on one sheet of A4: the verdict first, then the curve, then what stands behind them.
 * The same result gives the same bytes.
 */
public final class ReportPage {
  private ReportPage() {}

  /** The page, UTF-8, complete in itself. */
  public static String html(Report report) {
    Room room = Room.of(report);
    Markup body = new Markup();
    body.open("main", "class", "sheet " + room);
    Headline.write(body, report);
    body.open("figure", "class", "curve");
    body.add(CurvePicture.inPage(report, room.curveHeight()));
    body.close().line();
    body.open("div", "class", "columns").line().open("div");
    ValuesTable.write(body, report);
    CheckList.write(body, report.document());
    body.close().line().open("div");
    Reasons.write(body, report, room);
    body.close().close().line();
    FactsTable.write(body, report);
    SealBlock.write(body, report.seal());
    foot(body);
    body.close().line();
    String title = Words.text("title", report.asset(), Words.of("verdict", report.shown()));
    return PageFrame.page(
        new PageFrame.Head(title, report.id().orElse(""), Styles.text("report.css"), ""), body);
  }

  private static void foot(Markup body) {
    body.element("p", Words.text("caution"), "class", "caution").line();
    body.open("div", "class", "signature");
    for (String line : new String[] {"signature.name", "signature.date", "signature.sign"}) {
      body.element("span", Words.text(line));
    }
    body.close().line();
  }
}
