package org.thumbseal.report;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.stream.Collectors;
import org.thumbseal.grade.Criteria.DecisionRule;
import org.thumbseal.grade.Grade;
import org.thumbseal.grade.LimitCheck;
import org.thumbseal.grade.Verdict;
import org.thumbseal.measurement.Budgeted;
import org.thumbseal.measurement.Measurement;
import org.thumbseal.measurement.Observed;
import org.thumbseal.measurement.Quality.Zero;
import org.thumbseal.quantity.Quantity;
import org.thumbseal.record.ResultDocument;
import org.thumbseal.report.TextTable.Side;
import org.thumbseal.wire.WireRecord.Reference;

/**
 * How the values of a result were reached, how sure each is, and how the verdict followed: to be
 * checked by hand. No line is longer than 100 characters.
 */
public final class ExplainText {
  private static final String INDENT = "  ";

  private final Observed observed;
  private final Grade grade;
  private final boolean absolute;
  private final List<String> lines = new ArrayList<>();

  private ExplainText(ResultDocument result) {
    observed = result.observed();
    grade = result.grade();
    absolute = result.test().reference() == Reference.ABSOLUTE;
  }

  /** The lines, without their ends. */
  public static List<String> lines(ResultDocument result) {
    ExplainText text = new ExplainText(result);
    text.zero();
    for (Map.Entry<String, Budgeted> entry : text.observed.budgeted().entrySet()) {
      text.quantity(entry.getKey(), entry.getValue());
    }
    text.decide(result);
    return text.lines;
  }

  private void zero() {
    Zero zero = observed.zero();
    heading("Zero of the sensor");
    say(
        format(
            absolute
                ? "At rest the sensor reads %.3f kPa, U = %.3f kPa; the vacuum is counted down from"
                    + " there. Known from: %s."
                : "At rest the sensor reads a vacuum of %.3f kPa, U = %.3f kPa, which is taken off"
                    + " all readings. Known from: %s.",
            absolute ? -zero.kilopascals() : zero.kilopascals(),
            Quantity.COVERAGE_FACTOR * zero.standardUncertainty(),
            zero.source()));
    zero.drift()
        .ifPresent(
            d -> say(format("After the test the vacuum at rest was %+.3f kPa off that.", d)));
  }

  private void quantity(String name, Budgeted quantity) {
    heading(capital(words(name)) + ": " + text(quantity.quantity()) + " (k = 2)");
    quantity.reached().ifPresent(this::say);
    lines.add("");
    lines.addAll(BudgetText.lines(quantity));
  }

  private void decide(ResultDocument result) {
    if (result.measurement().isPresent()) {
      decisions(result.measurement().get());
    }
    verdict();
  }

  private void decisions(Measurement measurement) {
    DecisionRule rule = grade.criteria().decisionRule();
    heading("Decision, by the rule '" + rule.name().toLowerCase(Locale.ROOT) + "'");
    say(
        rule == DecisionRule.GUARDED
            ? "Pass at least U inside a limit, fail at least U outside, inconclusive between."
            : "The value alone decides; U does not count.");
    lines.add("");
    checks(measurement);
    lines.add("");
    if (measurement.riseTime().isEmpty()) {
      say(
          format(
              "The vacuum climbed by %.2f kPa at most; %.2f kPa are asked for.",
              measurement.highestRise(), measurement.riseLimit()));
    }
    say(
        "Conforms: the probability that the true value keeps the limit, Phi((y - T)/u) at a lower"
            + " one, Phi((T - y)/u) at an upper one (JCGM 106:2012, 7). It decides nothing.");
  }

  private void checks(Measurement measurement) {
    TextTable table =
        new TextTable(
            Side.LEFT, Side.RIGHT, Side.RIGHT, Side.LEFT, Side.LEFT, Side.LEFT, Side.RIGHT);
    table.row("", "value y", "U", "limit T", "nothing decided", "outcome", "conforms");
    table.rule();
    if (measurement.riseTime().isEmpty()) {
      table.row("rise time", "not timed", "", atMost(), "", "", "");
    }
    LimitCheck.of(measurement, grade).forEach(check -> row(table, check));
    lines.addAll(table.lines());
  }

  private String atMost() {
    return format("at most %.2f s", grade.criteria().riseSeconds());
  }

  private static void row(TextTable table, LimitCheck check) {
    String unit = check.value().unit();
    String side = check.side() == LimitCheck.Side.AT_LEAST ? "at least" : "at most";
    table.row(
        words(check.measurement()),
        format("%.2f %s", check.value().value(), unit),
        format("%.2f %s", check.value().expandedUncertainty(), unit),
        format("%s %.2f %s", side, check.limit(), unit),
        band(check),
        check.outcome().code(),
        percent(check.conformance()));
  }

  /** Never certain: a normal distribution has no end. */
  private static String percent(double probability) {
    if (probability > 0.9995) {
      return "> 99.9 %";
    }
    return probability < 0.0005 ? "< 0.1 %" : format("%.1f %%", 100 * probability);
  }

  private static String band(LimitCheck check) {
    return check.guardBand() == 0
        ? "nowhere"
        : format(
            "%.2f to %.2f", check.limit() - check.guardBand(), check.limit() + check.guardBand());
  }

  private void verdict() {
    lines.add("");
    String codes =
        grade.reasons().stream().map(r -> r.code().code()).collect(Collectors.joining(", "));
    String what = "Verdict: " + grade.verdict().code() + " (" + codes + ").";
    say(
        grade.verdict() == Verdict.INVALID
            ? what + " The test cannot be judged, whatever stands at the limits."
            : what + " The worst outcome decides.");
  }

  private void heading(String text) {
    lines.add("");
    lines.add(INDENT + text);
  }

  private void say(String sentence) {
    lines.addAll(Paragraph.lines(INDENT + INDENT, sentence));
  }

  private static String capital(String text) {
    return text.substring(0, 1).toUpperCase(Locale.ROOT) + text.substring(1);
  }

  /** "riseTime" as "rise time". */
  private static String words(String name) {
    return name.replaceAll("([A-Z])", " $1").toLowerCase(Locale.ROOT);
  }

  private static String text(Quantity quantity) {
    return format(
        "%.3f +- %.3f %s", quantity.value(), quantity.expandedUncertainty(), quantity.unit());
  }

  private static String format(String format, Object... values) {
    return String.format(Locale.ROOT, format, values);
  }
}
