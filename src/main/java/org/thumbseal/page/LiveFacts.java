package org.thumbseal.page;

import java.util.Optional;
import org.thumbseal.grade.Criteria;
import org.thumbseal.grade.Limits;
import org.thumbseal.json.Decimals;
import org.thumbseal.json.Json;
import org.thumbseal.measurement.AmbientPressure;
import org.thumbseal.pipeline.GradingSettings;
import org.thumbseal.pipeline.LiveStream;
import org.thumbseal.wire.WireRecord.Identity;
import org.thumbseal.wire.WireRecord.Reference;
import tools.jackson.databind.node.ObjectNode;

/**
 * What changes seldom at a port.
 *
 * @param identity what the sensor said of itself
 * @param ambient that a test would be graded with
 */
record LiveFacts(Optional<Identity> identity, Optional<AmbientPressure> ambient) {
  /** The stream's own thread asks. */
  static LiveFacts of(LiveStream stream, GradingSettings settings) {
    return new LiveFacts(stream.identity(), stream.ambient(settings));
  }

  /** A port without a sensor; the limits as they would be at sea level or at a known pressure. */
  static ObjectNode unknown(GradingSettings settings) {
    return new LiveFacts(Optional.empty(), LiveStream.ambientBefore(settings))
        .tree(settings, false);
  }

  ObjectNode tree(GradingSettings settings, boolean calibrated) {
    ObjectNode node = Json.object();
    identity.ifPresent(sensor -> node.set("sensor", sensor(sensor)));
    node.put("calibrated", calibrated);
    ambient.ifPresent(a -> LineQuality.put(node, "ambient", a.kilopascals(), 2));
    node.set("limits", limits(settings.criteria(), Limits.of(settings.criteria(), ambient)));
    return node;
  }

  private static ObjectNode sensor(Identity sensor) {
    return Json.object()
        .put("id", sensor.sensorId())
        .put("firmware", sensor.firmware())
        .put("reference", sensor.reference() == Reference.GAUGE ? "gauge" : "absolute")
        .put("low", sensor.lowPascals())
        .put("high", sensor.highPascals())
        .put("rate", Decimals.round(sensor.hertz(), 2));
  }

  /** Limits as they are applied: kPa, s and the factor of altitude. */
  static ObjectNode limits(Criteria criteria, Limits limits) {
    return Json.object()
        .put("rise", Decimals.round(limits.riseKilopascals(), 3))
        .put("riseSeconds", Decimals.round(criteria.riseSeconds(), 3))
        .put("maximum", Decimals.round(limits.maximumKilopascals(), 3))
        .put("openLimit", Decimals.round(criteria.openKilopascals(), 3))
        .put("altitudeFactor", Decimals.round(limits.factor(), 4));
  }
}
