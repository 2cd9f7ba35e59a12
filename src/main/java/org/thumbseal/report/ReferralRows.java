package org.thumbseal.report;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.thumbseal.refer.Referral;
import org.thumbseal.refer.ReferredTest;
import org.thumbseal.refer.ReferredTest.Value;

/** The tests of a referral as rows, the last first. */
final class ReferralRows {
  private static final List<String> NAMES = List.of("riseTime", "maximumVacuum", "pumpingSpeed");
  private static final int LONGEST_REMARK = 60;
  private static final int DIGITS = 16;

  private ReferralRows() {}

  /**
   * A test in words.
   *
   * @param date when
   * @param shown verdict, or {@code void}
   * @param values one of each kind, empty where it was not measured
   * @param remarks what the curve suggested, and what else is to be known
   * @param digest beginning of the digest of its document
   */
  record Row(String date, String shown, List<String> values, String remarks, String digest) {
    Row {
      values = List.copyOf(values);
    }
  }

  static List<String> columns() {
    return Stream.of("date", "verdict", "rise", "maximum", "speed")
        .map(name -> Words.text("history.col." + name))
        .toList();
  }

  static List<Row> of(Referral referral, int most) {
    Dates dates = new Dates(referral.subject().zone());
    List<Row> rows = new ArrayList<>();
    for (ReferredTest test : referral.tests()) {
      rows.add(0, row(test, dates));
    }
    return rows.subList(0, Math.min(most, rows.size()));
  }

  private static Row row(ReferredTest test, Dates dates) {
    return new Row(
        test.at().map(dates::minute).orElseGet(() -> Words.text("refer.undated")),
        test.outcome().shown(),
        NAMES.stream().map(name -> value(test, name).orElse("")).toList(),
        Clipped.text(remarks(test), LONGEST_REMARK),
        test.source().digest().substring(0, Math.min(DIGITS, test.source().digest().length())));
  }

  /** A value of a test with its U, as far as it was measured. */
  static Optional<String> value(ReferredTest test, String name) {
    return Optional.ofNullable(test.values().get(name))
        .map(value -> value.isBound() ? Words.text("value.bound", said(value)) : said(value));
  }

  private static String said(Value value) {
    String expanded = value.expanded().map(u -> " \u00b1 " + Markup.number("%.2f", u)).orElse("");
    return Markup.number("%.2f", value.value()) + expanded + " " + value.unit();
  }

  private static String remarks(ReferredTest test) {
    List<String> said = new ArrayList<>();
    test.outcome().voided().ifPresent(why -> said.add(Words.text("history.voided", why)));
    if (test.outcome().corrected() && test.outcome().voided().isEmpty()) {
      said.add(Words.text("history.corrected"));
    }
    if (!findings(test).isEmpty()) {
      said.add(findings(test));
    }
    test.outcome().note().ifPresent(said::add);
    return String.join("; ", said);
  }

  /** What its curve suggests, in short. */
  static String findings(ReferredTest test) {
    return test.seen().findings().stream()
        .limit(3)
        .map(
            finding ->
                Words.of("finding", finding.code())
                    + Markup.number(" %.0f %%", 100 * finding.confidence()))
        .collect(Collectors.joining(", "));
  }
}
