package org.thumbseal.report;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Collectors;
import org.thumbseal.json.DocumentView;

/** With what, where and by which rules it was measured, for whoever checks it. */
final class FactsTable {
  private final DocumentView document;
  private final Report report;
  private final Markup body;

  private FactsTable(Markup body, Report report) {
    this.body = body;
    this.report = report;
    this.document = report.document();
  }

  static void write(Markup body, Report report) {
    new FactsTable(body, report).write();
  }

  private void write() {
    body.element("h2", Words.text("facts")).open("dl", "class", "facts").line();
    row("fact.sensor", sensor());
    row("fact.criteria", criteria());
    row("fact.calibration", calibration());
    row("fact.ambient", ambient());
    row("fact.recording", recording());
    row("fact.model", model());
    row("fact.result", software());
    row("fact.sha256", document.text("/evidence/sha256").orElse(""));
    body.close().line();
  }

  private void row(String name, String value) {
    body.open("div").element("dt", Words.text(name));
    body.element("dd", value.isEmpty() ? Words.text("fact.none") : value).close().line();
  }

  private String sensor() {
    List<String> parts = new ArrayList<>();
    document.text("/test/sensor/id").ifPresent(parts::add);
    document
        .text("/test/sensor/firmware")
        .map(v -> Words.text("firmware", v))
        .ifPresent(parts::add);
    document.text("/test/sensor/reference").ifPresent(parts::add);
    document.text("/test/source").map(v -> Words.text("source", v)).ifPresent(parts::add);
    return String.join(", ", parts);
  }

  private String calibration() {
    Optional<String> date = document.text("/test/sensor/calibration/date");
    return date.map(
            day ->
                Words.text(
                    "calibrated",
                    day,
                    document.text("/test/sensor/calibration/due").orElse("?"),
                    document.text("/test/sensor/calibration/standing").orElse("?"),
                    document.text("/test/sensor/calibration/reference").orElse("?"),
                    document.text("/test/sensor/calibration/certificate").orElse("?")))
        .orElseGet(() -> Words.text("uncalibrated"));
  }

  private String ambient() {
    return document
        .quantity("/test/ambient/quantity")
        .map(
            q ->
                Words.text(
                    "ambient",
                    Numbers.withUncertainty(q),
                    Words.of("from", document.text("/test/ambient/from").orElse(""))))
        .orElseGet(() -> Words.text("ambient.unknown"));
  }

  private String criteria() {
    String name = document.text("/criteria/name").orElse("?");
    String rule = document.text("/criteria/decisionRule").orElse("?");
    String said = Words.text("criteria", name, Words.of("rule", rule));
    Optional<Double> factor = document.number("/criteria/altitudeFactor");
    return factor
        .map(
            f ->
                said
                    + Words.text(
                        "criteria.adjusted",
                        f,
                        document.number("/criteria/unadjusted/rise/value").orElse(0.0),
                        document
                            .number("/criteria/unadjusted/maximumVacuumLimit/value")
                            .orElse(0.0)))
        .orElse(said);
  }

  private String recording() {
    Map<String, Double> rejected = document.numbers("/evidence/rejected");
    String lines =
        rejected.entrySet().stream()
            .limit(6)
            .map(e -> Numbers.plain(e.getValue()) + " " + e.getKey())
            .collect(Collectors.joining(", "));
    return Words.text(
        "recording",
        document.text("/evidence/capture").orElse("?"),
        Numbers.plain(document.number("/evidence/samples").orElse(0.0)),
        Numbers.plain(document.number("/evidence/gaps").orElse(0.0)),
        lines.isEmpty() ? Words.text("recording.none") : lines);
  }

  private String model() {
    if (!document.has("/diagnostics/pumpModel")) {
      return Words.text("model.none");
    }
    return PumpModel.distrust(document)
        .map(why -> Words.text("model.distrusted", why))
        .orElseGet(
            () ->
                Words.text(
                    "model",
                    document.number("/diagnostics/pumpModel/rmsMisfit/value").orElse(0.0)));
  }

  private String software() {
    return Words.text(
        "software",
        report.id().orElse("?"),
        document.text("/software/name").orElse("?"),
        document.text("/software/version").orElse("?"));
  }
}
