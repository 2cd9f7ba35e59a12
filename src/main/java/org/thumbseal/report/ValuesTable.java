package org.thumbseal.report;

import java.util.Optional;
import org.thumbseal.json.DocumentView;
import org.thumbseal.json.DocumentView.Measured;

/** What was measured, each value with its uncertainty beside the limit that it was held against. */
final class ValuesTable {
  private static final String[] OTHERS = {
    "pumpingSpeed", "freeAirFlow", "leakWhilePumping", "ultimatePressure", "leakRate", "decayRate"
  };

  private final Markup body;
  private final Report report;
  private final DocumentView document;
  private final TestShape shape;

  private ValuesTable(Markup body, Report report) {
    this.body = body;
    this.report = report;
    document = report.document();
    shape = new TestShape(document);
  }

  static void write(Markup body, Report report) {
    new ValuesTable(body, report).write();
  }

  private void write() {
    body.element("h2", Words.text("values")).open("table", "class", "values");
    body.open("tr").element("th", "").element("th", Words.text("values.measured"));
    body.element("th", Words.text("values.limit")).element("th", "").close().line();
    rise();
    maximum();
    open();
    for (String name : OTHERS) {
      document.quantity("/measurements/" + name).ifPresent(q -> other(name, q));
    }
    body.close().line();
  }

  private void rise() {
    Optional<Measured> time = document.quantity("/measurements/riseTime");
    Optional<Double> limit = shape.riseSeconds();
    String name = shape.rise().map(kpa -> Words.text("value.rise", kpa)).orElse("");
    row(
        name,
        time.map(Numbers::withUncertainty).orElseGet(this::noRise),
        limit.map(s -> Words.text("limit.at-most", s)).orElse(""),
        time.isEmpty() ? missed() : judged(time, limit, -1));
  }

  private void maximum() {
    Optional<Measured> maximum = document.quantity("/measurements/maximumVacuum");
    Optional<Double> limit = shape.maximum();
    row(
        Words.text("value.maximum"),
        maximum.map(Numbers::withUncertainty).orElseGet(() -> Words.text("value.not-measured")),
        limit.map(kpa -> Words.text("limit.at-least", kpa)).orElse(""),
        judged(maximum, limit, 1));
  }

  private void open() {
    document
        .quantity("/measurements/openVacuum")
        .ifPresent(
            q ->
                row(
                    Words.text("value.open"),
                    Numbers.withUncertainty(q),
                    document
                        .number("/criteria/openVacuumLimit/value")
                        .map(kpa -> Words.text("limit.usual", kpa))
                        .orElse(""),
                    ""));
  }

  private void other(String name, Measured quantity) {
    boolean bound = document.text("/measurements/" + name + "/bound").isPresent();
    String value = Numbers.withUncertainty(quantity);
    body.open("tr").element("th", Words.text("value." + name));
    body.element("td", bound ? Words.text("value.bound", value) : value, "colspan", "3");
    body.close().line();
  }

  /** A test that cannot be judged has kept and missed nothing. */
  private boolean isInvalid() {
    return report.verdict().equals("invalid");
  }

  private String noRise() {
    return Words.text(isInvalid() ? "value.not-measured" : "value.not-reached");
  }

  private String missed() {
    return isInvalid() ? "" : Words.text("judged.missed");
  }

  /** By the rule of the document; side is 1 where more is better, -1 where less is. */
  private String judged(Optional<Measured> value, Optional<Double> limit, int side) {
    if (value.isEmpty() || limit.isEmpty() || isInvalid()) {
      return "";
    }
    double inside = side * (value.get().value() - limit.get());
    boolean guarded = !document.text("/criteria/decisionRule").orElse("").equals("simple");
    double band = guarded ? value.get().expanded().orElse(0.0) : 0;
    String word = inside >= band ? "kept" : inside <= -band ? "missed" : "near";
    return Words.text("judged." + word);
  }

  private void row(String name, String value, String limit, String judged) {
    body.open("tr").element("th", name).element("td", value);
    body.element("td", limit).element("td", judged, "class", "judged").close().line();
  }
}
