package org.thumbseal.exchange;

import org.thumbseal.json.Json;
import tools.jackson.databind.node.ObjectNode;

/** How one resource names another. */
enum FhirReference {
  /** In a Bundle, by the {@code fullUrl} of its entry; the server puts its own address there. */
  IN_BUNDLE,
  /** By type and id, on the server that takes both. */
  RELATIVE;

  ObjectNode to(String type, String id) {
    return Json.object().put("reference", this == IN_BUNDLE ? "urn:uuid:" + id : type + "/" + id);
  }
}
