package org.thumbseal.exchange;

import java.io.IOException;
import java.io.Writer;
import java.util.function.Function;
import org.thumbseal.json.Json;
import org.thumbseal.json.Printable;
import tools.jackson.databind.node.ObjectNode;

/**
 * One FHIR R4 Bundle of the type transaction, an entry a line. Each entry is put under its own id,
 * so that a server which takes it twice has everything once.
 */
public final class FhirBundle implements ResultTable {
  private final FhirResources resources;
  private final Writer out;
  private boolean begun;

  /** Nothing is written yet. */
  public FhirBundle(Function<String, AssetFacts> register, Writer out) {
    this.resources = new FhirResources(FhirReference.IN_BUNDLE, register);
    this.out = out;
  }

  @Override
  public void result(SealedResult sealed, FlatResult flat) throws IOException {
    for (ObjectNode resource : resources.of(sealed, flat)) {
      out.write(
          begun ? ",\n" : "{\"resourceType\":\"Bundle\",\"type\":\"transaction\",\"entry\":[\n");
      out.write(Printable.json(Json.mapper().writeValueAsString(entry(resource))));
      begun = true;
    }
  }

  private static ObjectNode entry(ObjectNode resource) {
    String id = resource.get("id").stringValue();
    ObjectNode entry = Json.object().put("fullUrl", "urn:uuid:" + id);
    entry.set("resource", resource);
    entry
        .putObject("request")
        .put("method", "PUT")
        .put("url", resource.get("resourceType").stringValue() + "/" + id);
    return entry;
  }

  /** An array without a member is no FHIR. */
  @Override
  public void end() throws IOException {
    out.write(begun ? "\n]}\n" : "{\"resourceType\":\"Bundle\",\"type\":\"transaction\"}\n");
    out.flush();
  }
}
