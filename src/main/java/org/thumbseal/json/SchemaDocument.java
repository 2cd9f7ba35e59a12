package org.thumbseal.json;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.Objects;

/** The JSON Schemas (draft 2020-12) that are published with the program. */
public enum SchemaDocument {
  /** Result documents, sealed or not. */
  RESULT("thumbseal-result-1.schema.json"),
  /** The head of a ledger, {@code head.json}. */
  HEAD("thumbseal-head-1.schema.json"),
  /** Calibrations of sensors. */
  CALIBRATION("thumbseal-calibration-1.schema.json"),
  /** Corrections of results. */
  CORRECTION("thumbseal-correction-1.schema.json"),
  /** What people did to pumps. */
  INSPECTION("thumbseal-inspection-1.schema.json"),
  /** Searches for a leak. */
  LEAK_SEARCH("thumbseal-leak-search-1.schema.json");

  private final String resource;

  SchemaDocument(String resource) {
    this.resource = resource;
  }

  /** The schema as text, ended by LF. */
  public String text() {
    try (InputStream in = SchemaDocument.class.getResourceAsStream(resource)) {
      return new String(
          Objects.requireNonNull(in, resource).readAllBytes(), StandardCharsets.UTF_8);
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }
}
