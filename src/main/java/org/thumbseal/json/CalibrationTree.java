package org.thumbseal.json;

import java.time.Instant;
import java.time.format.DateTimeFormatter;
import java.time.format.DateTimeFormatterBuilder;
import java.util.List;
import org.thumbseal.calibration.AsFound;
import org.thumbseal.calibration.Calibration;
import org.thumbseal.calibration.CalibrationFacts;
import org.thumbseal.calibration.CalibrationLine;
import org.thumbseal.calibration.CalibrationPoint;
import org.thumbseal.calibration.ReferenceGauge;
import org.thumbseal.calibration.StraightLine;
import org.thumbseal.quantity.Quantity;
import org.thumbseal.record.Software;
import tools.jackson.databind.node.ArrayNode;
import tools.jackson.databind.node.ObjectNode;

/** A calibration as the tree that is written and sealed; what does not exist is absent. */
public final class CalibrationTree {
  /** Name and version of the document's shape. */
  public static final String SCHEMA = "thumbseal-calibration/1";

  /** What kind of document this is. */
  public static final String KIND = "calibration";

  /** Decimal places of readings, uncertainties and temperatures. */
  private static final int PLACES = 4;

  private static final int GAIN_PLACES = 8;
  private static final int VARIANCE_PLACES = 12;
  static final DateTimeFormatter MILLIS =
      new DateTimeFormatterBuilder().appendInstant(3).toFormatter();

  private CalibrationTree() {}

  /** A number as documents carry it, so that what is computed rests on what is written. */
  public static double rounded(double value) {
    return Decimals.round(value, PLACES).doubleValue();
  }

  /** The document without ledger and signature. */
  public static ObjectNode of(Calibration calibration) {
    ObjectNode tree = said(calibration.facts(), calibration.points());
    tree.put("id", calibration.id());
    tree.set("line", line(calibration.line()));
    AsFound asFound = calibration.asFound();
    ObjectNode found = tree.putObject("asFound");
    found.set("error", value(asFound.error(), "kPa"));
    found.set("at", value(asFound.at(), "kPa"));
    tree.putObject("software").put("name", Software.NAME).put("version", Software.VERSION);
    return tree;
  }

  /** What was said and read, without anything worked out from it: what the id is made of. */
  public static ObjectNode said(CalibrationFacts facts, List<CalibrationPoint> points) {
    ObjectNode tree = Json.object().put("schema", SCHEMA).put("kind", KIND);
    tree.putObject("sensor").put("id", facts.sensor());
    tree.put("calibratedAt", MILLIS.format(facts.calibratedAt()));
    tree.put("due", facts.due().toString());
    facts.temperature().ifPresent(t -> tree.set("temperature", value(t, "Cel")));
    facts.by().ifPresent(who -> tree.put("by", who));
    tree.set("reference", reference(facts.reference()));
    tree.set("repeatability", value(facts.repeatability(), "kPa"));
    ArrayNode pairs = tree.putArray("pairs");
    for (CalibrationPoint point : points) {
      ObjectNode pair = pairs.addObject().put("unit", "kPa");
      number(pair, "sensor", point.sensor(), PLACES);
      number(pair, "reference", point.reference(), PLACES);
    }
    return tree;
  }

  private static ObjectNode reference(ReferenceGauge gauge) {
    ObjectNode node =
        Json.object().put("name", gauge.name()).put("certificate", gauge.certificate());
    ObjectNode uncertainty = node.putObject("uncertainty").put("unit", "kPa");
    number(uncertainty, "expandedUncertainty", gauge.expandedUncertainty(), PLACES);
    number(uncertainty, "coverageFactor", gauge.coverageFactor(), PLACES);
    return node;
  }

  private static ObjectNode line(CalibrationLine fitted) {
    StraightLine line = fitted.line();
    ObjectNode node = Json.object();
    node.set("offset", uncertain(fitted.offset(), "kPa", line.varianceAt(0)));
    node.set("gain", uncertain(fitted.gain(), "1", line.slopeVariance()));
    ObjectNode covariance = node.putObject("covariance");
    number(covariance, "offset", line.varianceAt(0), VARIANCE_PLACES);
    number(covariance, "gain", line.slopeVariance(), VARIANCE_PLACES);
    number(covariance, "offsetGain", line.covarianceAt(0), VARIANCE_PLACES);
    node.set("residualStandardDeviation", value(line.residual(), "kPa"));
    ObjectNode range = node.putObject("range").put("unit", "kPa");
    number(range, "low", fitted.lowest(), PLACES);
    number(range, "high", fitted.highest(), PLACES);
    return node;
  }

  private static ObjectNode uncertain(double value, String unit, double variance) {
    ObjectNode node = Json.object().put("unit", unit);
    number(node, "value", value, GAIN_PLACES);
    double expanded = Quantity.COVERAGE_FACTOR * Math.sqrt(variance);
    number(node, "expandedUncertainty", expanded, GAIN_PLACES);
    number(node, "coverageFactor", Quantity.COVERAGE_FACTOR, PLACES);
    return node;
  }

  private static ObjectNode value(double value, String unit) {
    ObjectNode node = Json.object().put("unit", unit);
    number(node, "value", value, PLACES);
    return node;
  }

  private static void number(ObjectNode node, String name, double value, int places) {
    node.put(name, Decimals.round(value, places));
  }

  /** The moment as documents carry it. */
  public static Instant toMillis(Instant instant) {
    return Instant.parse(MILLIS.format(instant));
  }
}
