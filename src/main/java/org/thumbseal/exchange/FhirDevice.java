package org.thumbseal.exchange;

import org.thumbseal.json.Json;
import tools.jackson.databind.node.ObjectNode;

/** The pump under test, and the sensor, as Device. */
final class FhirDevice {
  private FhirDevice() {}

  static String pumpId(String asset) {
    return FhirTerms.id("pump", asset);
  }

  static String sensorId(String sensor) {
    return FhirTerms.id("sensor", sensor);
  }

  static ObjectNode pump(String asset, AssetFacts facts) {
    ObjectNode device = device(pumpId(asset), "asset", asset);
    facts.serial().ifPresent(serial -> device.put("serialNumber", serial));
    facts
        .description()
        .ifPresent(
            name ->
                device
                    .putArray("deviceName")
                    .addObject()
                    .put("name", name)
                    .put("type", "user-friendly-name"));
    device.set("type", FhirTerms.own("device", "suction-pump"));
    facts.location().ifPresent(place -> device.putObject("location").put("display", place));
    return device;
  }

  static ObjectNode sensor(String sensor) {
    ObjectNode device = device(sensorId(sensor), "sensor", sensor);
    device.set("type", FhirTerms.own("device", "vacuum-sensor"));
    return device;
  }

  private static ObjectNode device(String id, String system, String value) {
    ObjectNode device = Json.object().put("resourceType", "Device").put("id", id);
    device.putArray("identifier").add(FhirTerms.identifier(FhirTerms.OWN + system, value));
    return device;
  }
}
