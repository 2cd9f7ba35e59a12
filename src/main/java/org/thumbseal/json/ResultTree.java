package org.thumbseal.json;

import java.util.List;
import org.thumbseal.finding.Finding;
import org.thumbseal.grade.Criteria;
import org.thumbseal.grade.Grade;
import org.thumbseal.grade.Reason;
import org.thumbseal.measurement.Exponential;
import org.thumbseal.measurement.Measurement;
import org.thumbseal.measurement.Observed;
import org.thumbseal.measurement.Quality;
import org.thumbseal.quantity.Quantity;
import org.thumbseal.record.Evidence;
import org.thumbseal.record.ResultDocument;
import org.thumbseal.record.Software;
import org.thumbseal.visit.Check;
import tools.jackson.databind.node.ArrayNode;
import tools.jackson.databind.node.ObjectNode;

/** A result as the tree that is written, sealed and imported; what does not exist is absent. */
public final class ResultTree {
  private static final int PLACES = 4;

  private ResultTree() {}

  /** The document without ledger and signature. */
  public static ObjectNode of(ResultDocument document) {
    ObjectNode tree = Json.object();
    tree.put("schema", ResultDocument.SCHEMA);
    tree.put("id", document.id());
    tree.put("kind", ResultDocument.KIND);
    document.asset().ifPresent(id -> tree.putObject("asset").put("id", id));
    checks(tree, document.checks());
    tree.set("test", TestTree.of(document.test(), document.observed()));
    tree.set("measurements", measurements(document.observed()));
    tree.set("budgets", BudgetTree.of(document.observed()));
    tree.set("criteria", criteria(document.grade()));
    tree.put("verdict", document.grade().verdict().code());
    tree.set("reasons", reasons(document.grade().reasons()));
    tree.set("findings", findings(document.findings()));
    document.comparedWith().ifPresent(id -> tree.put("comparedWith", id));
    tree.set("diagnostics", diagnostics(document.observed()));
    tree.set("evidence", evidence(document.evidence()));
    tree.putObject("software").put("name", Software.NAME).put("version", Software.VERSION);
    return tree;
  }

  private static void checks(ObjectNode tree, List<Check> checks) {
    for (Check check : checks) {
      ObjectNode node = tree.withArray("checks").addObject();
      node.put("item", check.item().code()).put("state", check.state().code());
      check.part().ifPresent(words -> node.put("part", words));
      check.reason().ifPresent(words -> node.put("reason", words));
    }
  }

  private static ObjectNode measurements(Observed observed) {
    ObjectNode node = Json.object();
    if (observed instanceof Measurement measurement) {
      measurements(node, measurement);
    } else {
      observed.budgeted().forEach((name, q) -> node.set(name, quantity(q.quantity())));
    }
    return node;
  }

  private static void measurements(ObjectNode node, Measurement measurement) {
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
    ArrayNode array = Json.array();
    findings.forEach(
        f -> {
          ObjectNode node = array.addObject().put("code", f.code().code());
          number(node, "confidence", f.confidence());
          node.put("text", f.text()).put("advice", f.advice());
        });
    return array;
  }

  private static ArrayNode reasons(List<Reason> reasons) {
    ArrayNode array = Json.array();
    reasons.forEach(r -> array.addObject().put("code", r.code().code()).put("text", r.text()));
    return array;
  }

  private static ObjectNode diagnostics(Observed observed) {
    ObjectNode node = Json.object();
    ObjectNode zero = node.putObject("zero");
    zero.set("quantity", kilopascals(observed.zero().kilopascals(), observed.zero()));
    zero.put("from", observed.zero().source());
    observed.zero().drift().ifPresent(d -> limit(zero, "drift", d, "kPa"));
    limit(node, "noise", observed.noise(), "kPa");
    if (observed instanceof Measurement measurement) {
      limit(node, "blocked", measurement.quality().blockedSeconds(), "s");
    }
    ObjectNode clock = node.putObject("sensorClock").put("steady", observed.clock().steady());
    clock.put("rate", Decimals.round(observed.clock().rate(), 6));
    if (observed instanceof Measurement measurement) {
      models(node, measurement);
    }
    return node;
  }

  private static void models(ObjectNode node, Measurement measurement) {
    measurement.exponential().ifPresent(e -> exponential(node.putObject("exponentialFit"), e));
    measurement.pump().ifPresent(p -> PumpTree.diagnostics(node.putObject("pumpModel"), p));
    measurement.decay().ifPresent(decay -> node.set("decay", DecayTree.diagnostics(decay)));
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
}
