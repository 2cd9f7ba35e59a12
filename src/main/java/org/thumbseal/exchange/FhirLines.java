package org.thumbseal.exchange;

import java.io.IOException;
import java.io.Writer;
import java.util.function.Function;
import org.thumbseal.json.Json;
import org.thumbseal.json.Printable;
import tools.jackson.databind.node.ObjectNode;

/** FHIR R4 resources, one a line, as bulk imports take them. */
public final class FhirLines implements ResultTable {
  private final FhirResources resources;
  private final Writer out;

  /** Nothing is written yet. */
  public FhirLines(Function<String, AssetFacts> register, Writer out) {
    this.resources = new FhirResources(FhirReference.RELATIVE, register);
    this.out = out;
  }

  @Override
  public void result(SealedResult sealed, FlatResult flat) throws IOException {
    for (ObjectNode resource : resources.of(sealed, flat)) {
      out.write(Printable.json(Json.mapper().writeValueAsString(resource)));
      out.write('\n');
    }
  }

  @Override
  public void end() throws IOException {
    out.flush();
  }
}
