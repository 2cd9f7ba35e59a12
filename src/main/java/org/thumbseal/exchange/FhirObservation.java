package org.thumbseal.exchange;

import java.math.BigDecimal;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.thumbseal.json.DocumentView;
import org.thumbseal.json.Json;
import tools.jackson.databind.node.ArrayNode;
import tools.jackson.databind.node.ObjectNode;

/** A test as Observation: the verdict is its value, what was measured are its components. */
final class FhirObservation {
  /** Text and words that are components as well. */
  private static final Set<Column> SAID =
      Set.of(
          Column.SCHEMA,
          Column.CRITERIA,
          Column.CALIBRATION_ID,
          Column.CAPTURE,
          Column.CAPTURE_SHA256,
          Column.REPLACED,
          Column.NOT_OK);

  /** The limit that a value was held against, and which end of the range it is. */
  private static final Map<Column, Limit> LIMITS =
      Map.of(
          Column.RISE_TIME_S, new Limit("high", Column.RISE_TIME_LIMIT_S),
          Column.MAXIMUM_VACUUM_KPA, new Limit("low", Column.MAXIMUM_VACUUM_LIMIT_KPA),
          Column.OPEN_VACUUM_KPA, new Limit("high", Column.OPEN_VACUUM_LIMIT_KPA));

  private static final Map<String, String> INTERPRETATION =
      Map.of("pass", "N", "fail", "A", "inconclusive", "IND");

  private final SealedResult sealed;
  private final FlatResult flat;
  private final FhirReference reference;

  private FhirObservation(SealedResult sealed, FlatResult flat, FhirReference reference) {
    this.sealed = sealed;
    this.flat = flat;
    this.reference = reference;
  }

  private record Limit(String end, Column column) {}

  static ObjectNode of(SealedResult sealed, FlatResult flat, FhirReference reference) {
    return new FhirObservation(sealed, flat, reference).tree();
  }

  private ObjectNode tree() {
    ObjectNode tree = Json.object().put("resourceType", "Observation").put("id", sealed.id());
    tree.putObject("meta").putArray("tag").add(FhirTerms.coding(FhirTerms.OWN + "seal", seal()));
    tree.putArray("identifier").add(FhirTerms.identifier(FhirTerms.URI, "urn:uuid:" + sealed.id()));
    tree.put("status", status());
    tree.set("code", FhirTerms.own("kind", "occlusion-test"));
    text(Column.ASSET_ID)
        .ifPresent(a -> tree.set("subject", reference.to("Device", FhirDevice.pumpId(a))));
    text(Column.STARTED_AT).ifPresent(at -> tree.put("effectiveDateTime", at));
    tree.set("valueCodeableConcept", FhirTerms.own("verdict", verdict()));
    interpret(tree);
    note(tree);
    text(Column.SENSOR_ID)
        .ifPresent(s -> tree.set("device", reference.to("Device", FhirDevice.sensorId(s))));
    components(tree.putArray("component"));
    return tree;
  }

  private String seal() {
    return text(Column.SEAL).orElseThrow();
  }

  private String verdict() {
    return text(Column.VERDICT).orElseThrow();
  }

  private Optional<String> text(Column column) {
    return flat.cell(column).filter(text -> !text.isBlank());
  }

  /** What is not sealed by a trusted key is nothing that may be called final. */
  private String status() {
    if (!sealed.counts()) {
      return "entered-in-error";
    }
    if (!sealed.seal().isTrusted()) {
      return "unknown";
    }
    return sealed.corrected() > 0 ? "amended" : "final";
  }

  private void interpret(ObjectNode tree) {
    ObjectNode concept = FhirTerms.own("verdict", verdict());
    Optional.ofNullable(INTERPRETATION.get(verdict()))
        .filter(code -> sealed.counts())
        .ifPresent(
            code ->
                ((ArrayNode) concept.get("coding"))
                    .insert(0, FhirTerms.coding(FhirTerms.INTERPRETATION, code)));
    tree.putArray("interpretation").add(concept);
  }

  private void note(ObjectNode tree) {
    for (DocumentView reason : sealed.view().list("/reasons")) {
      reason.text("/text").ifPresent(text -> note(tree, text));
    }
    text(Column.VOID_REASON).ifPresent(text -> note(tree, "Void: " + text));
    text(Column.NOTE).ifPresent(text -> note(tree, text));
    if (!sealed.seal().isTrusted()) {
      note(tree, "Not sealed by a trusted key: " + sealed.seal().text());
    }
  }

  private static void note(ObjectNode tree, String text) {
    if (!text.isBlank()) {
      tree.withArray("note").addObject().put("text", text);
    }
  }

  private void components(ArrayNode components) {
    for (Column column : flat.cells().keySet()) {
      if (column.kind() == ColumnKind.QUANTITY) {
        measured(component(components, column), column);
      } else if (SAID.contains(column)) {
        text(column).ifPresent(text -> component(components, column).put("valueString", text));
      }
    }
    reasons(components);
    findings(components);
  }

  private static ObjectNode component(ArrayNode components, Column column) {
    ObjectNode component = components.addObject();
    component.set("code", FhirTerms.column(column));
    return component;
  }

  private void measured(ObjectNode component, Column column) {
    ObjectNode quantity = quantity(column);
    if (column == Column.LEAK_RATE_ML_MIN
        && text(Column.LEAK_RATE_BOUND).equals(Optional.of("upper"))) {
      quantity.put("comparator", "<=");
    }
    component.set("valueQuantity", quantity);
    Limit limit = LIMITS.get(column);
    if (limit != null && flat.cell(limit.column()).isPresent()) {
      component.putArray("referenceRange").addObject().set(limit.end(), quantity(limit.column()));
    }
  }

  private ObjectNode quantity(Column column) {
    return quantity(new BigDecimal(flat.cell(column).orElseThrow()), column.unit());
  }

  private static ObjectNode quantity(BigDecimal value, String unit) {
    return Json.object()
        .put("value", value)
        .put("unit", unit)
        .put("system", FhirTerms.UCUM)
        .put("code", unit);
  }

  private void reasons(ArrayNode components) {
    text(Column.REASONS)
        .ifPresent(
            words -> {
              ObjectNode component = component(components, Column.REASONS);
              ArrayNode codings = component.putObject("valueCodeableConcept").putArray("coding");
              for (String code : words.split(" ", -1)) {
                codings.add(FhirTerms.coding(FhirTerms.OWN + "reason", code));
              }
            });
  }

  /** How sure it is, 0 to 1. */
  private void findings(ArrayNode components) {
    for (DocumentView finding : sealed.view().list("/findings")) {
      Optional<Double> confidence = finding.number("/confidence");
      Optional<String> code = finding.text("/code").filter(c -> c.matches("[a-z-]+"));
      if (code.isPresent() && confidence.isPresent()) {
        ObjectNode component = components.addObject();
        component.set("code", FhirTerms.own("finding", code.get()));
        component.set(
            "valueQuantity", quantity(new BigDecimal(Member.plain(confidence.get())), "1"));
      }
    }
  }
}
