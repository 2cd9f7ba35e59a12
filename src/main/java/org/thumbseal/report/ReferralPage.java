package org.thumbseal.report;

import java.util.List;
import org.thumbseal.refer.Deed;
import org.thumbseal.refer.Referral;

/**
 * The sheet that goes with a pump to the qualified technician: one page of A4. What does not find
 * room is cut, and shows that it was; the sealed documents have all of it.
 */
public final class ReferralPage {
  private static final int LONGEST_ASSET = 50;

  private final Referral referral;
  private final ReferralSentences said;
  private final ReferralRoom room;
  private final Markup body = new Markup();

  private ReferralPage(Referral referral) {
    this.referral = referral;
    this.said = new ReferralSentences(referral);
    this.room = ReferralRoom.of(said, referral);
  }

  /**
   * Writes it.
   *
   * @param reports of the tests that are drawn ({@link Referral#drawn}), in their order, with their
   *     curves
   */
  public static String html(Referral referral, List<Report> reports) {
    return new ReferralPage(referral).html(reports);
  }

  private String html(List<Report> reports) {
    String asset = referral.subject().asset();
    String title = Words.text("refer.title", asset);
    body.open("main", "class", "sheet " + room).line();
    head();
    ReferralCards.write(body, referral, reports);
    tests();
    body.open("div", "class", "columns").open("div");
    list(Words.text("refer.looks"), said.looks());
    body.close().line().open("div");
    list(Words.text("refer.parts"), said.parts());
    body.close().close().line();
    list(Words.text("refer.deeds"), said.deeds());
    said.head(Deed.TROUBLE).ifPresent(head -> list(head, said.guide()));
    said.head(Deed.LEAK_SEARCH).ifPresent(head -> list(head, said.search()));
    body.open("div", "class", "columns").open("div");
    ReferralCards.findings(body, referral, reports);
    body.close().line().open("div");
    list(said.since(), said.untried());
    body.close().close().line();
    ReferralSources.write(body, referral);
    foot();
    body.close().line();
    return PageFrame.page(
        new PageFrame.Head(title, "referral of " + asset, Styles.text("refer.css"), ""), body);
  }

  private void head() {
    body.open("header").element("h1", Words.text("refer.head"));
    body.element("p", Clipped.text(referral.subject().asset(), LONGEST_ASSET), "class", "asset");
    body.close().line();
    String known = said.known();
    body.open("p");
    body.text(known.isEmpty() ? Words.text("refer.unlisted") : Words.text("refer.register", known));
    body.text(" ").text(said.made()).close().line();
    body.open("p", "class", "complaint").element("b", Words.text("refer.complaint.head"));
    body.text(" ").text(referral.subject().complaint().orElse("")).close().line();
    body.open("div", "class", "caution");
    said.cautions().forEach(caution -> body.element("p", caution));
    body.close().line();
  }

  private void tests() {
    List<ReferralRows.Row> rows = ReferralRows.of(referral, room.tests());
    if (rows.isEmpty()) {
      return;
    }
    body.element("h2", Words.text("history.tests")).open("table", "class", "tests").open("tr");
    ReferralRows.columns().forEach(name -> body.element("th", name));
    body.element("th", Words.text("history.col.remarks"));
    body.element("th", Words.text("refer.digest")).close().line();
    for (ReferralRows.Row row : rows) {
      body.open("tr", "class", row.shown()).element("td", row.date());
      body.open("td").add(VerdictShape.of(row.shown()));
      body.text(Words.of("verdict", row.shown())).close();
      row.values().forEach(value -> body.element("td", value));
      body.element("td", row.remarks()).element("td", row.digest(), "class", "exact");
      body.close().line();
    }
    body.close().line();
    int earlier = referral.tests().size() - rows.size();
    if (earlier > 0) {
      body.element("p", Words.text("refer.more", earlier)).line();
    }
  }

  private void list(String head, List<String> lines) {
    body.element("h2", head);
    if (lines.isEmpty()) {
      body.element("p", Words.text("refer.none")).line();
      return;
    }
    body.open("ul");
    lines.forEach(line -> body.element("li", line));
    body.close().line();
  }

  private void foot() {
    body.element("p", Words.text("caution"), "class", "terms").line();
    body.open("div", "class", "signature");
    for (String line : new String[] {"handed", "received", "released"}) {
      body.element("span", Words.text("refer.sign." + line));
    }
    body.close().line();
  }
}
