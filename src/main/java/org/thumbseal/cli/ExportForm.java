package org.thumbseal.cli;

import java.util.Arrays;
import java.util.Locale;
import java.util.stream.Collectors;
import picocli.CommandLine.ITypeConverter;
import picocli.CommandLine.TypeConversionException;

/** What an export is written as. */
enum ExportForm {
  CSV,
  JSONL,
  FHIR,
  FHIR_NDJSON;

  boolean isFhir() {
    return this == FHIR || this == FHIR_NDJSON;
  }

  @Override
  public String toString() {
    return name().toLowerCase(Locale.ROOT).replace('_', '-');
  }

  /** From the word on the command line. */
  static final class Converter implements ITypeConverter<ExportForm> {
    @Override
    public ExportForm convert(String text) {
      return Arrays.stream(values())
          .filter(form -> form.toString().equals(text))
          .findFirst()
          .orElseThrow(
              () ->
                  new TypeConversionException(
                      "'"
                          + text
                          + "' is none of "
                          + Arrays.stream(values())
                              .map(ExportForm::toString)
                              .collect(Collectors.joining(", "))));
    }
  }
}
