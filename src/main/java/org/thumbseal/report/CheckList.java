package org.thumbseal.report;

import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.thumbseal.json.DocumentView;

/** What a person looked at on this visit; nothing where nothing was said. */
final class CheckList {
  /** There are seven items; whatever is beyond does not come from this program. */
  private static final int MOST = 8;

  private static final String NOT_CHECKED = "not-checked";

  private CheckList() {}

  static void write(Markup body, DocumentView document) {
    List<DocumentView> checks = document.list("/checks");
    if (checks.isEmpty()) {
      return;
    }
    body.element("h2", Words.text("checks")).open("table", "class", "checks");
    checks.stream().filter(CheckList::isSaid).limit(MOST).forEach(check -> row(body, check));
    body.close().line();
    left(body, checks);
    long said = checks.stream().filter(CheckList::isSaid).count();
    if (said > MOST) {
      body.element("p", Words.text("more", said - MOST), "class", "more").line();
    }
  }

  private static boolean isSaid(DocumentView check) {
    return !state(check).equals(NOT_CHECKED);
  }

  /** What was left out takes one line: a sheet is short, and nothing more is known of it. */
  private static void left(Markup body, List<DocumentView> checks) {
    String items =
        checks.stream()
            .filter(check -> !isSaid(check))
            .limit(MOST)
            .map(CheckList::item)
            .collect(Collectors.joining(", "));
    if (!items.isEmpty()) {
      body.element("p", Words.of("state", NOT_CHECKED) + ": " + items).line();
    }
  }

  private static String item(DocumentView check) {
    return Words.of("item", check.text("/item").orElse(""));
  }

  private static String state(DocumentView check) {
    return check.text("/state").orElse("");
  }

  private static void row(Markup body, DocumentView check) {
    String state = state(check);
    String more =
        Stream.of(check.text("/part"), check.text("/reason"))
            .flatMap(Optional::stream)
            .collect(Collectors.joining(", "));
    body.open("tr").element("th", item(check));
    body.element("td", Words.of("state", state), "class", known(state)).element("td", more);
    body.close().line();
  }

  private static String known(String state) {
    return state.equals("not-ok") ? "bad" : "state";
  }
}
