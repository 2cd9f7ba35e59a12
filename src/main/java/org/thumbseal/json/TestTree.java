package org.thumbseal.json;

import java.time.format.DateTimeFormatter;
import java.time.format.DateTimeFormatterBuilder;
import org.thumbseal.calibration.AppliedCalibration;
import org.thumbseal.measurement.Budgeted;
import org.thumbseal.measurement.Measurement;
import org.thumbseal.measurement.Observed;
import org.thumbseal.measurement.PhaseSpan;
import org.thumbseal.record.TestFacts;
import org.thumbseal.wire.WireRecord.Identity;
import org.thumbseal.wire.WireRecord.Reference;
import tools.jackson.databind.node.ArrayNode;
import tools.jackson.databind.node.ObjectNode;

/** When, where from and with what a test was recorded, and its phases. */
final class TestTree {
  private static final DateTimeFormatter MILLIS =
      new DateTimeFormatterBuilder().appendInstant(3).toFormatter();

  private TestTree() {}

  /** The member {@code test} of a document. */
  static ObjectNode of(TestFacts facts, Observed observed) {
    ObjectNode test = Json.object();
    facts.startedAt().ifPresent(instant -> test.put("startedAt", MILLIS.format(instant)));
    facts.leakSearch().ifPresent(pump -> test.put("leakSearch", pump));
    facts.start().ifPresent(start -> start(test.putObject("start"), start));
    if (observed instanceof Measurement measurement) {
      ResultTree.number(test, "occludedAt", measurement.occludedAt().value());
    }
    test.put("source", facts.source());
    test.set("sensor", sensor(facts, observed));
    observed
        .ambient()
        .ifPresent(
            ambient -> {
              ObjectNode node = test.putObject("ambient");
              node.set("quantity", ResultTree.quantity(ambient.quantity()));
              node.put("from", ambient.origin().code());
            });
    facts
        .jarLitres()
        .ifPresent(v -> ResultTree.number(test.putObject("jar").put("unit", "L"), "value", v));
    ArrayNode phases = test.putArray("phases");
    observed.phases().forEach(span -> phase(phases, span));
    return test;
  }

  private static void start(ObjectNode node, TestFacts.Start start) {
    node.put("by", start.by().code());
    ResultTree.number(node, "at", start.at());
  }

  private static ObjectNode sensor(TestFacts facts, Observed observed) {
    ObjectNode sensor = Json.object();
    facts.identity().ifPresent(identity -> identify(sensor, identity));
    sensor.put("reference", facts.reference() == Reference.GAUGE ? "gauge" : "absolute");
    if (observed.calibration() instanceof AppliedCalibration applied) {
      if (facts.identity().isEmpty()) {
        // It was said, not heard; the calibration that was used is that of this one.
        sensor.put("id", applied.calibration().facts().sensor());
      }
      sensor.set("calibration", AppliedTree.of(applied, highest(observed)));
    } else {
      sensor.put("calibration", "uncalibrated");
    }
    return sensor;
  }

  /** The highest vacuum that was measured, kPa. */
  private static double highest(Observed observed) {
    return observed instanceof Measurement measurement
        ? measurement.openVacuum().value() + measurement.highestRise()
        : observed.budgeted().values().stream().mapToDouble(Budgeted::value).max().orElse(0);
  }

  private static void identify(ObjectNode sensor, Identity identity) {
    sensor.put("id", identity.sensorId()).put("firmware", identity.firmware());
    sensor
        .putObject("range")
        .put("low", identity.lowPascals())
        .put("high", identity.highPascals())
        .put("unit", "Pa");
    ResultTree.number(sensor.putObject("rate").put("unit", "Hz"), "value", identity.hertz());
  }

  private static void phase(ArrayNode phases, PhaseSpan span) {
    ObjectNode node = phases.addObject().put("phase", span.phase().code());
    ResultTree.number(node, "start", span.start());
    ResultTree.number(node, "end", span.end());
  }
}
