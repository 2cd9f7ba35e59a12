package org.thumbseal.report;

import java.util.List;
import java.util.Locale;
import org.thumbseal.json.DocumentView;

/** Why the verdict is what it is, and what the curve suggests to look at next. */
final class Reasons {
  private final Markup body;
  private int left;

  private Reasons(Markup body, int left) {
    this.body = body;
    this.left = left;
  }

  static void write(Markup body, Report report, Room room) {
    DocumentView document = report.document();
    Reasons reasons = new Reasons(body, room.characters(report));
    body.element("h2", Words.text("reasons"));
    reasons.list(document.list("/reasons"), false);
    List<DocumentView> findings = document.list("/findings");
    if (!findings.isEmpty()) {
      body.element("h2", Words.text("findings"));
      reasons.list(findings, true);
    }
  }

  /** As many as there is room for; how many are left out is said. */
  private void list(List<DocumentView> items, boolean findings) {
    body.open("ul");
    int shown = 0;
    for (DocumentView item : items) {
      int cost = Room.cost(item.text("/text").orElse("")) + advice(item);
      if (shown > 0 && cost > left) {
        break;
      }
      left -= cost;
      shown++;
      write(item, findings);
    }
    body.close().line();
    if (shown < items.size()) {
      body.element("p", Words.text("more", items.size() - shown), "class", "more").line();
    }
  }

  private static int advice(DocumentView item) {
    return item.text("/advice").map(Room::cost).orElse(0);
  }

  private void write(DocumentView item, boolean finding) {
    String code = item.text("/code").orElse("");
    body.open("li").element("b", Words.of(finding ? "finding" : "reason", code));
    if (finding) {
      item.number("/confidence").ifPresent(sure -> body.text(percent(sure)));
    }
    body.text(" ").text(item.text("/text").orElse(""));
    item.text("/advice")
        .ifPresent(next -> body.text(" ").element("i", Words.text("next")).text(" ").text(next));
    body.close().line();
  }

  private static String percent(double share) {
    double percent = 100 * Math.max(0, Math.min(1, share));
    return String.format(Locale.ROOT, " (%.0f %%)", percent);
  }
}
