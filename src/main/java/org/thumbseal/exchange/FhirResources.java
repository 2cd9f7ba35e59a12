package org.thumbseal.exchange;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.function.Function;
import tools.jackson.databind.node.ObjectNode;

/** The FHIR R4 resources of results; each Device comes once, before what names it. */
final class FhirResources {
  private final FhirReference reference;
  private final Function<String, AssetFacts> register;
  private final Set<String> devices = new HashSet<>();

  FhirResources(FhirReference reference, Function<String, AssetFacts> register) {
    this.reference = reference;
    this.register = register;
  }

  List<ObjectNode> of(SealedResult sealed, FlatResult flat) {
    List<ObjectNode> resources = new ArrayList<>();
    id(flat, Column.ASSET_ID)
        .filter(asset -> devices.add(FhirDevice.pumpId(asset)))
        .ifPresent(asset -> resources.add(FhirDevice.pump(asset, register.apply(asset))));
    id(flat, Column.SENSOR_ID)
        .filter(sensor -> devices.add(FhirDevice.sensorId(sensor)))
        .ifPresent(sensor -> resources.add(FhirDevice.sensor(sensor)));
    resources.add(FhirObservation.of(sealed, flat, reference));
    FhirProvenance.of(sealed, flat, reference).ifPresent(resources::add);
    return resources;
  }

  private static Optional<String> id(FlatResult flat, Column column) {
    return flat.cell(column).filter(text -> !text.isBlank());
  }
}
