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

  private CheckList() {}

  static void write(Markup body, DocumentView document) {
    List<DocumentView> checks = document.list("/checks");
    if (checks.isEmpty()) {
      return;
    }
    body.element("h2", Words.text("checks")).open("table", "class", "checks");
    checks.stream().limit(MOST).forEach(check -> row(body, check));
    body.close().line();
    if (checks.size() > MOST) {
      body.element("p", Words.text("more", checks.size() - MOST), "class", "more").line();
    }
  }

  private static void row(Markup body, DocumentView check) {
    String state = check.text("/state").orElse("");
    String more =
        Stream.of(check.text("/part"), check.text("/reason"))
            .flatMap(Optional::stream)
            .collect(Collectors.joining(", "));
    body.open("tr").element("th", Words.of("item", check.text("/item").orElse("")));
    body.element("td", Words.of("state", state), "class", known(state)).element("td", more);
    body.close().line();
  }

  private static String known(String state) {
    return state.equals("not-ok") ? "bad" : "state";
  }
}
