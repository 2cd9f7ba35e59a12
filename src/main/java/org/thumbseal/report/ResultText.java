package org.thumbseal.report;

import java.util.ArrayList;
import java.util.EnumSet;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.thumbseal.finding.Finding;
import org.thumbseal.grade.Reason;
import org.thumbseal.grade.ReasonCode;
import org.thumbseal.grade.Verdict;
import org.thumbseal.measurement.Budgeted;
import org.thumbseal.measurement.Measurement;
import org.thumbseal.measurement.Observed;
import org.thumbseal.measurement.PumpEstimate;
import org.thumbseal.quantity.Quantity;
import org.thumbseal.record.ResultDocument;

/** A result in a few lines of text. */
public final class ResultText {
  private static final Set<ReasonCode> KEPT =
      EnumSet.of(ReasonCode.RISE_IN_TIME, ReasonCode.MAXIMUM_REACHED);

  private ResultText() {}

  /** The lines, without their ends. */
  public static List<String> lines(ResultDocument result) {
    List<String> lines = new ArrayList<>();
    lines.add(headline(result));
    result
        .measurement()
        .ifPresentOrElse(test -> measured(lines, test), () -> open(lines, result.observed()));
    said(lines, result);
    lines.addAll(ChecksText.lines(result));
    return lines;
  }

  private static void open(List<String> lines, Observed observed) {
    Optional.ofNullable(observed.budgeted().get("openVacuum"))
        .ifPresent(q -> lines.add(row("open vacuum", q.quantity())));
  }

  private static void measured(List<String> lines, Measurement measured) {
    lines.add(row("open vacuum", measured.openVacuum().quantity()));
    String rise = format("rise of %.1f kPa in", measured.riseLimit());
    lines.add(
        measured
            .riseTime()
            .map(q -> row(rise, q.quantity()))
            .orElseGet(() -> format("  %-22s not reached", rise)));
    measured.maximumVacuum().ifPresent(q -> lines.add(row("maximum vacuum", q.quantity())));
    measured.pump().ifPresent(p -> lines.add(pumpingSpeed(p)));
    measured.decay().ifPresent(decay -> lines.addAll(DecayText.lines(decay)));
  }

  private static void said(List<String> lines, ResultDocument result) {
    for (Reason reason : result.grade().reasons()) {
      lines.add("  " + reason.code().code() + ": " + reason.text());
    }
    for (Finding finding : result.findings()) {
      lines.add(
          format(
              "  suggests %s (%.0f %%): %s",
              finding.code().code(), 100 * finding.confidence(), finding.text()));
      lines.add("    next: " + finding.advice());
    }
  }

  private static String pumpingSpeed(PumpEstimate pump) {
    String name = "pumping speed";
    return pump.distrust()
        .map(why -> format("  %-22s not told: %s", name, why.text()))
        .or(() -> pump.perLitre().map(f -> row(name, f.pumpingSpeed().quantity())))
        .orElseGet(() -> format("  %-22s not told without the volume of the jar (--jar-l)", name));
  }

  /**
   * The result in one line: verdict, asset, the two numbers, and the codes of all reasons but those
   * that say that a limit was kept.
   */
  public static String oneLine(ResultDocument result) {
    StringBuilder line = new StringBuilder(result.grade().verdict().name());
    line.append(' ').append(result.asset().orElse("unassigned"));
    Map<String, Budgeted> measured = result.observed().budgeted();
    number(measured, "riseTime").ifPresent(q -> line.append(", rise ").append(q));
    number(measured, "maximumVacuum").ifPresent(q -> line.append(", maximum ").append(q));
    for (Reason reason : result.grade().reasons()) {
      if (!KEPT.contains(reason.code())) {
        line.append(", ").append(reason.code().code());
      }
    }
    return line.toString();
  }

  private static Optional<String> number(Map<String, Budgeted> measured, String name) {
    return Optional.ofNullable(measured.get(name)).map(q -> text(q.quantity()));
  }

  /** What kept a test from passing, and what to do about it, a line each; nothing if it passed. */
  public static List<String> why(ResultDocument result) {
    if (result.grade().verdict() == Verdict.PASS) {
      return List.of();
    }
    return result.grade().reasons().stream()
        .filter(reason -> !KEPT.contains(reason.code()))
        .map(reason -> reason.code().code() + ": " + reason.text())
        .toList();
  }

  private static String text(Quantity quantity) {
    return format(
        "%.2f +- %.2f %s", quantity.value(), quantity.expandedUncertainty(), quantity.unit());
  }

  /** Verdict, asset and where the test stands in the record. */
  static String headline(ResultDocument result) {
    return format(
        "%s  %s  (%s, %s)",
        result.grade().verdict().name(),
        result.asset().orElse("unassigned"),
        result.evidence().capture(),
        where(result));
  }

  private static String where(ResultDocument result) {
    return result
        .measurement()
        .map(test -> format("blocked at %.2f s", test.occludedAt().value()))
        .or(() -> result.test().start().map(s -> format("not blocked, started at %.2f s", s.at())))
        .orElse("not blocked");
  }

  static String row(String name, Quantity quantity) {
    return format(
        "  %-22s %8.2f %s +- %.2f %s",
        name, quantity.value(), quantity.unit(), quantity.expandedUncertainty(), quantity.unit());
  }

  private static String format(String format, Object... values) {
    return String.format(Locale.ROOT, format, values);
  }
}
