package org.thumbseal.report;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import org.thumbseal.record.ResultDocument;
import org.thumbseal.visit.Check;

/** What was looked at before a test, apart from what was measured. */
final class ChecksText {
  private ChecksText() {}

  /** A line for each item, under a heading; none where nothing was said. */
  static List<String> lines(ResultDocument result) {
    List<String> lines = new ArrayList<>();
    if (!result.checks().isEmpty()) {
      lines.add("  looked at before the test, no part of the verdict:");
      result.checks().forEach(check -> lines.add("    " + text(check)));
    }
    return lines;
  }

  private static String text(Check check) {
    return String.format(Locale.ROOT, "%-9s ", check.item().code())
        + check.state().code().replace('-', ' ')
        + check.part().map(words -> ", part: " + words).orElse("")
        + check.reason().map(words -> ", reason: " + words).orElse("");
  }
}
