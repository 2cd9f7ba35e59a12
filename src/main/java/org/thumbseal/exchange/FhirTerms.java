package org.thumbseal.exchange;

import java.nio.charset.StandardCharsets;
import org.thumbseal.json.Json;
import org.thumbseal.record.ResultId;
import org.thumbseal.seal.Sha256;
import tools.jackson.databind.node.ObjectNode;

/**
 * Codes and identifiers of FHIR R4 (4.0.1). Those of our own are URNs, for there is no code for an
 * occlusion test in a published system that we know of.
 */
final class FhirTerms {
  static final String OWN = "urn:thumbseal:";
  static final String UCUM = "http://unitsofmeasure.org";
  static final String INTERPRETATION =
      "http://terminology.hl7.org/CodeSystem/v3-ObservationInterpretation";

  /** System of identifiers that are URIs themselves. */
  static final String URI = "urn:ietf:rfc:3986";

  private FhirTerms() {}

  static ObjectNode coding(String system, String code) {
    return Json.object().put("system", system).put("code", code);
  }

  /** A concept of one of our systems, whose code is its text. */
  static ObjectNode own(String system, String code) {
    ObjectNode concept = Json.object();
    concept.putArray("coding").add(coding(OWN + system, code));
    return concept.put("text", code.replace('-', ' '));
  }

  /** A column, in the words of its meaning. */
  static ObjectNode column(Column column) {
    return own("column", column.key()).put("text", column.meaning());
  }

  static ObjectNode identifier(String system, String value) {
    return Json.object().put("system", system).put("value", value);
  }

  /** The key that sealed, by its thumbprint as a URI (RFC 9278). */
  static ObjectNode key(String kid, String name) {
    ObjectNode who = Json.object();
    who.set("identifier", identifier(URI, "urn:ietf:params:oauth:jwk-thumbprint:sha-256:" + kid));
    return name.isBlank() ? who : who.put("display", name);
  }

  /** An id that follows from what it stands for, so that nothing is there twice. */
  static String id(String kind, String name) {
    byte[] bytes = (kind + " " + name).getBytes(StandardCharsets.UTF_8);
    return ResultId.of(Sha256.hex(bytes), 1);
  }
}
