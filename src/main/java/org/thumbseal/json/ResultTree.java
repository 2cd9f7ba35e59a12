package org.thumbseal.json;

import java.time.Instant;
import java.time.format.DateTimeFormatter;
import java.time.format.DateTimeFormatterBuilder;
import java.util.List;
import org.thumbseal.calibration.AppliedCalibration;
import org.thumbseal.finding.Finding;
import org.thumbseal.grade.Criteria;
import org.thumbseal.grade.Grade;
import org.thumbseal.grade.Reason;
import org.thumbseal.measurement.Exponential;
import org.thumbseal.measurement.Measurement;
import org.thumbseal.measurement.PhaseSpan;
import org.thumbseal.measurement.Quality;
import org.thumbseal.quantity.Quantity;
import org.thumbseal.record.Evidence;
import org.thumbseal.record.ResultDocument;
import org.thumbseal.record.Software;
import org.thumbseal.record.TestFacts;
import org.thumbseal.wire.WireRecord.Identity;
import org.thumbseal.wire.WireRecord.Reference;
import tools.jackson.databind.node.ArrayNode;
import tools.jackson.databind.node.ObjectNode;

/** A result as the tree that is written, sealed and imported; what does not exist is absent. */
public final class ResultTree {
  private static final int PLACES = 4;
  private static final DateTimeFormatter MILLIS =
      new DateTimeFormatterBuilder().appendInstant(3).toFormatter();

  private ResultTree() {}

  /** The document without ledger and signature. */
  public static ObjectNode of(ResultDocument document) {
    ObjectNode tree = Json.object();
    tree.put("schema", ResultDocument.SCHEMA);
    tree.put("id", document.id());
    tree.put("kind", ResultDocument.KIND);
    document.asset().ifPresent(id -> tree.putObject("asset").put("id", id));
    tree.set("test", test(document.test(), document.measurement()));
    tree.set("measurements", measurements(document.measurement()));
    tree.set("budgets", BudgetTree.of(document.measurement()));
    tree.set("criteria", criteria(document.grade()));
    tree.put("verdict", document.grade().verdict().code());
    tree.set("reasons", reasons(document.grade().reasons()));
    tree.set("findings", findings(document.findings()));
    document.comparedWith().ifPresent(id -> tree.put("comparedWith", id));
    tree.set("diagnostics", diagnostics(document.measurement()));
    tree.set("evidence", evidence(document.evidence()));
    tree.putObject("software").put("name", Software.NAME).put("version", Software.VERSION);
    return tree;
  }

  private static ObjectNode test(TestFacts facts, Measurement measurement) {
    ObjectNode test = Json.object();
    facts.startedAt().ifPresent(instant -> test.put("startedAt", time(instant)));
    number(test, "occludedAt", measurement.occludedAt().value());
    test.put("source", facts.source());
    test.set("sensor", sensor(facts, measurement));
    measurement
        .ambient()
        .ifPresent(
            ambient -> {
              ObjectNode node = test.putObject("ambient");
              node.set("quantity", quantity(ambient.quantity()));
              node.put("from", ambient.origin().code());
            });
    facts.jarLitres().ifPresent(v -> number(test.putObject("jar").put("unit", "L"), "value", v));
    measurement.phases().forEach(span -> phase(test.withArray("phases"), span));
    return test;
  }

  private static ObjectNode sensor(TestFacts facts, Measurement measurement) {
    ObjectNode sensor = Json.object();
    facts.identity().ifPresent(identity -> identify(sensor, identity));
    sensor.put("reference", facts.reference() == Reference.GAUGE ? "gauge" : "absolute");
    if (measurement.calibration() instanceof AppliedCalibration applied) {
      double highest = measurement.openVacuum().value() + measurement.highestRise();
      sensor.set("calibration", AppliedTree.of(applied, highest));
    } else {
      sensor.put("calibration", "uncalibrated");
    }
    return sensor;
  }

  private static void identify(ObjectNode sensor, Identity identity) {
    sensor.put("id", identity.sensorId()).put("firmware", identity.firmware());
    sensor
        .putObject("range")
        .put("low", identity.lowPascals())
        .put("high", identity.highPascals())
        .put("unit", "Pa");
    number(sensor.putObject("rate").put("unit", "Hz"), "value", identity.hertz());
  }

  private static void phase(ArrayNode phases, PhaseSpan span) {
    ObjectNode node = phases.addObject().put("phase", span.phase().code());
    number(node, "start", span.start());
    number(node, "end", span.end());
  }

  private static ObjectNode measurements(Measurement measurement) {
    ObjectNode node = Json.object();
    node.set("openVacuum", quantity(measurement.openVacuum().quantity()));
    measurement.riseTime().ifPresent(q -> node.set("riseTime", quantity(q.quantity())));
    measurement.maximumVacuum().ifPresent(q -> node.set("maximumVacuum", quantity(q.quantity())));
    measurement
        .exponential()
        .ifPresent(
            e -> {
              node.set("timeConstant", fitted(e.timeConstant(), e));
              node.set("asymptote", fitted(e.asymptote(), e));
            });
    measurement.pump().ifPresent(p -> PumpTree.measurements(node, p));
    measurement.decay().ifPresent(decay -> DecayTree.measurements(decay, node));
    return node;
  }

  /** Said at the value too: nobody who takes it alone shall take it for clean. */
  private static ObjectNode fitted(Quantity quantity, Exponential fit) {
    ObjectNode node = quantity(quantity);
    return fit.distrust().isEmpty() ? node : node.put("trusted", false);
  }

  private static ObjectNode criteria(Grade grade) {
    Criteria criteria = grade.criteria();
    ObjectNode node = Json.object();
    node.put("name", criteria.name());
    limit(node, "rise", grade.limits().riseKilopascals(), "kPa");
    limit(node, "riseTimeLimit", criteria.riseSeconds(), "s");
    limit(node, "usualRiseTimeFrom", criteria.usualRiseFrom(), "s");
    limit(node, "maximumVacuumLimit", grade.limits().maximumKilopascals(), "kPa");
    limit(node, "openVacuumLimit", criteria.openKilopascals(), "kPa");
    node.put("altitudeRule", CriteriaFile.name(criteria.altitudeRule()));
    node.put("decisionRule", CriteriaFile.name(criteria.decisionRule()));
    Criteria.Equipment equipment = criteria.equipment();
    equipment.jarLitres().ifPresent(v -> limit(node, "jar", v, "L"));
    equipment.ratedLitresPerMinute().ifPresent(v -> limit(node, "ratedSpeed", v, "L/min"));
    if (grade.limits().isAdjusted()) {
      number(node, "altitudeFactor", grade.limits().factor());
      ObjectNode unadjusted = node.putObject("unadjusted");
      limit(unadjusted, "rise", criteria.riseKilopascals(), "kPa");
      limit(unadjusted, "maximumVacuumLimit", criteria.maximumKilopascals(), "kPa");
    }
    return node;
  }

  static void limit(ObjectNode node, String name, double value, String unit) {
    number(node.putObject(name).put("unit", unit), "value", value);
  }

  private static ArrayNode findings(List<Finding> findings) {
    ArrayNode array = Json.mapper().createArrayNode();
    findings.forEach(
        f -> {
          ObjectNode node = array.addObject().put("code", f.code().code());
          number(node, "confidence", f.confidence());
          node.put("text", f.text()).put("advice", f.advice());
        });
    return array;
  }

  private static ArrayNode reasons(List<Reason> reasons) {
    ArrayNode array = Json.mapper().createArrayNode();
    reasons.forEach(r -> array.addObject().put("code", r.code().code()).put("text", r.text()));
    return array;
  }

  private static ObjectNode diagnostics(Measurement measurement) {
    Quality quality = measurement.quality();
    ObjectNode node = Json.object();
    ObjectNode zero = node.putObject("zero");
    zero.set("quantity", kilopascals(quality.zero().kilopascals(), quality.zero()));
    zero.put("from", quality.zero().source());
    quality.zero().drift().ifPresent(d -> limit(zero, "drift", d, "kPa"));
    limit(node, "noise", quality.noise(), "kPa");
    limit(node, "blocked", quality.blockedSeconds(), "s");
    ObjectNode clock = node.putObject("sensorClock").put("steady", quality.clock().steady());
    clock.put("rate", Decimals.round(quality.clock().rate(), 6));
    measurement.exponential().ifPresent(e -> exponential(node.putObject("exponentialFit"), e));
    measurement.pump().ifPresent(p -> PumpTree.diagnostics(node.putObject("pumpModel"), p));
    measurement.decay().ifPresent(decay -> node.set("decay", DecayTree.diagnostics(decay)));
    return node;
  }

  private static ObjectNode kilopascals(double value, Quality.Zero zero) {
    return quantity(Quantity.kilopascals(value, zero.standardUncertainty()));
  }

  private static void exponential(ObjectNode node, Exponential fit) {
    node.put("trusted", fit.distrust().isEmpty());
    fit.distrust().ifPresent(why -> node.put("why", why));
    limit(node, "rmsMisfit", fit.rms(), "kPa");
    number(node, "lag1Autocorrelation", fit.lag1());
  }

  private static ObjectNode evidence(Evidence evidence) {
    ObjectNode node = Json.object();
    node.put("capture", evidence.capture());
    node.put("sha256", evidence.sha256());
    evidence.columns().ifPresent(columns -> node.put("columns", columns));
    node.put("samples", evidence.samples());
    node.put("gaps", evidence.gaps());
    ObjectNode rejected = node.putObject("rejected");
    evidence.rejected().forEach(rejected::put);
    return node;
  }

  static ObjectNode quantity(Quantity quantity) {
    ObjectNode node = Json.object();
    number(node, "value", quantity.value());
    node.put("unit", quantity.unit());
    number(node, "expandedUncertainty", quantity.expandedUncertainty());
    number(node, "coverageFactor", Quantity.COVERAGE_FACTOR);
    return node;
  }

  static void number(ObjectNode node, String name, double value) {
    node.put(name, Decimals.round(value, PLACES));
  }

  private static String time(Instant instant) {
    return MILLIS.format(instant);
  }
}
