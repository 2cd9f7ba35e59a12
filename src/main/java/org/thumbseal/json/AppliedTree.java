package org.thumbseal.json;

import java.util.Locale;
import org.thumbseal.calibration.AppliedCalibration;
import org.thumbseal.calibration.Calibration;
import tools.jackson.databind.node.ObjectNode;

/** The calibration that a test used, as its result names it. */
final class AppliedTree {
  private static final int PLACES = 4;
  private static final int GAIN_PLACES = 6;

  private AppliedTree() {}

  /**
   * The block of the sensor.
   *
   * @param highest the highest vacuum of the test, kPa
   */
  static ObjectNode of(AppliedCalibration applied, double highest) {
    Calibration calibration = applied.calibration();
    ObjectNode node = Json.object();
    node.put("id", calibration.id());
    node.put("date", calibration.facts().date().toString());
    node.put("due", calibration.facts().due().toString());
    node.put("standing", applied.standing().name().toLowerCase(Locale.ROOT));
    node.put("reference", calibration.facts().reference().name());
    node.put("certificate", calibration.facts().reference().certificate());
    node.put("gain", Decimals.round(calibration.line().gain(), GAIN_PLACES));
    ObjectNode range = node.putObject("range").put("unit", "kPa");
    range.put("low", Decimals.round(calibration.line().lowest(), PLACES));
    range.put("high", Decimals.round(calibration.line().highest(), PLACES));
    applied.note(highest).ifPresent(note -> node.put("note", note));
    return node;
  }
}
