package org.thumbseal.exchange;

import java.nio.charset.StandardCharsets;
import java.util.Base64;
import java.util.Optional;
import org.thumbseal.json.Json;
import org.thumbseal.seal.LedgerEntry;
import tools.jackson.databind.node.ObjectNode;

/**
 * The seal as Provenance. It is a signature of the result document, not of the resource: the
 * document is named as the source, by its digest.
 */
final class FhirProvenance {
  private static final String ABSENT = "http://hl7.org/fhir/StructureDefinition/data-absent-reason";

  private FhirProvenance() {}

  /** Empty where the document is not sealed. */
  static Optional<ObjectNode> of(SealedResult sealed, FlatResult flat, FhirReference reference) {
    Optional<String> jws = sealed.view().text("/signature");
    Optional<LedgerEntry> entry = sealed.seal().entry();
    return jws.isEmpty() || entry.isEmpty()
        ? Optional.empty()
        : Optional.of(tree(sealed, flat, reference, jws.get()));
  }

  private static ObjectNode tree(
      SealedResult sealed, FlatResult flat, FhirReference reference, String jws) {
    ObjectNode tree =
        Json.object()
            .put("resourceType", "Provenance")
            .put("id", FhirTerms.id("provenance", sealed.id()));
    tree.putArray("target").add(reference.to("Observation", sealed.id()));
    time(tree, "recorded", flat.cell(Column.STARTED_AT));
    LedgerEntry entry = sealed.seal().entry().orElseThrow();
    ObjectNode who = FhirTerms.key(entry.kid(), sealed.seal().signer());
    tree.putArray("agent").addObject().set("who", who);
    ObjectNode source = tree.putArray("entity").addObject().put("role", "source");
    ObjectNode what = source.putObject("what");
    what.set("identifier", FhirTerms.identifier(FhirTerms.OWN + "document-sha256", entry.digest()));
    what.put("display", String.valueOf(sealed.file().getFileName()));
    ObjectNode signature = tree.putArray("signature").addObject();
    sign(signature, flat.cell(Column.STARTED_AT), who, jws);
    return tree;
  }

  private static void sign(
      ObjectNode signature, Optional<String> when, ObjectNode who, String jws) {
    ObjectNode type = FhirTerms.coding("urn:iso-astm:E1762-95:2013", "1.2.840.10065.1.12.1.14");
    signature.putArray("type").add(type.put("display", "Source Signature"));
    time(signature, "when", when);
    signature.set("who", who.deepCopy());
    signature
        .put("targetFormat", "application/json")
        .put("sigFormat", "application/jose")
        .put("data", Base64.getEncoder().encodeToString(jws.getBytes(StandardCharsets.US_ASCII)));
  }

  /** The resource asks for a time, and a test may have none. */
  private static void time(ObjectNode tree, String name, Optional<String> instant) {
    instant.ifPresentOrElse(
        text -> tree.put(name, text),
        () ->
            tree.putObject("_" + name)
                .putArray("extension")
                .addObject()
                .put("url", ABSENT)
                .put("valueCode", "unknown"));
  }
}
