package org.thumbseal.report;

import java.util.List;
import java.util.Optional;
import org.thumbseal.json.DocumentView;
import org.thumbseal.refer.Referral;
import org.thumbseal.refer.ReferredTest;

/** The tests that matter side by side: curve, numbers with U, and the limits they were held to. */
final class ReferralCards {
  private static final int LONGEST_FINDING = 230;

  private final Markup body;
  private final Referral referral;
  private final Dates dates;

  private ReferralCards(Markup body, Referral referral) {
    this.body = body;
    this.referral = referral;
    this.dates = new Dates(referral.subject().zone());
  }

  /**
   * Writes them.
   *
   * @param reports of the tests that are drawn, in their order
   */
  static void write(Markup body, Referral referral, List<Report> reports) {
    new ReferralCards(body, referral).write(reports);
  }

  private void write(List<Report> reports) {
    List<ReferredTest> drawn = referral.drawn();
    if (drawn.isEmpty()) {
      body.element("p", Words.text("refer.no-test"), "class", "said").line();
      return;
    }
    body.open("div", "class", "cards");
    for (int i = 0; i < drawn.size(); i++) {
      card(drawn.get(i), reports.get(i));
    }
    body.close().line();
    body.element("p", Words.text("refer.scale"), "class", "key").line();
  }

  private void card(ReferredTest test, Report report) {
    String shown = test.outcome().shown();
    body.open("div", "class", "card " + shown).open("p", "class", "head");
    body.add(VerdictShape.of(shown)).element("b", Words.of("verdict", shown));
    body.text(" " + test.at().map(dates::minute).orElseGet(() -> Words.text("refer.undated")));
    boolean isLastGood = referral.lastGood().filter(test::equals).isPresent();
    if (isLastGood) {
      body.text(" ").element("i", Words.text("refer.last-good"));
    }
    body.close().add(SmallCurve.of(report)).open("table");
    TestShape shape = new TestShape(report.document());
    row(test, "riseTime", shape.riseSeconds().map(s -> Words.text("limit.at-most", s)));
    row(test, "maximumVacuum", shape.maximum().map(kpa -> Words.text("limit.at-least", kpa)));
    row(test, "pumpingSpeed", Optional.empty());
    body.close().line();
    String findings = ReferralRows.findings(test);
    if (!findings.isEmpty()) {
      body.element("p", Words.text("refer.suggests", findings));
    }
    body.close().line();
  }

  private void row(ReferredTest test, String name, Optional<String> limit) {
    String missing = name.equals("pumpingSpeed") ? "" : Words.text("value.not-measured");
    String value = ReferralRows.value(test, name).orElse(missing);
    if (value.isEmpty()) {
      return;
    }
    body.open("tr").element("th", Words.text("refer.value." + name));
    body.open("td").element("b", value).element("small", limit.orElse("")).close().close();
  }

  /** What the last judged test suggests, in the words of its document, and what to look at next. */
  static void findings(Markup body, Referral referral, List<Report> reports) {
    Optional<ReferredTest> last = referral.last();
    int at = last.map(referral.drawn()::indexOf).orElse(-1);
    List<DocumentView> found = at < 0 ? List.of() : reports.get(at).document().list("/findings");
    body.element("h2", Words.text("refer.findings"));
    if (found.isEmpty()) {
      body.element("p", Words.text("refer.no-finding")).line();
      return;
    }
    body.open("ul");
    for (DocumentView finding : found.stream().limit(2).toList()) {
      String code = finding.text("/code").orElse("");
      body.open("li").element("b", Words.of("finding", code)).text(" ");
      body.text(Clipped.text(finding.text("/text").orElse(""), LONGEST_FINDING)).close();
    }
    body.close().line();
  }
}
