package org.thumbseal.cli;

import ca.uhn.fhir.context.FhirContext;
import ca.uhn.fhir.context.support.DefaultProfileValidationSupport;
import ca.uhn.fhir.parser.StrictErrorHandler;
import ca.uhn.fhir.validation.FhirValidator;
import ca.uhn.fhir.validation.ResultSeverityEnum;
import java.util.List;
import org.hl7.fhir.common.hapi.validation.support.CommonCodeSystemsTerminologyService;
import org.hl7.fhir.common.hapi.validation.support.InMemoryTerminologyServerValidationSupport;
import org.hl7.fhir.common.hapi.validation.support.ValidationSupportChain;
import org.hl7.fhir.common.hapi.validation.validator.FhirInstanceValidator;
import org.hl7.fhir.instance.model.api.IBaseResource;

/** FHIR R4 as its reference library for Java has it: HAPI FHIR with the definitions of 4.0.1. */
final class FhirRules {
  static final FhirContext R4 = FhirContext.forR4();

  private FhirRules() {}

  /** Reads a resource; whatever does not belong there is an exception. */
  static <T extends IBaseResource> T strict(Class<T> type, String json) {
    return R4.newJsonParser()
        .setParserErrorHandler(new StrictErrorHandler())
        .parseResource(type, json);
  }

  /** The same for a resource of whatever type. */
  static IBaseResource strict(String json) {
    return R4.newJsonParser().setParserErrorHandler(new StrictErrorHandler()).parseResource(json);
  }

  /** What the rules of R4 say against a resource. */
  static List<String> complaints(IBaseResource resource) {
    return validator().validateWithResult(resource).getMessages().stream()
        .filter(m -> m.getSeverity().compareTo(ResultSeverityEnum.WARNING) >= 0)
        // Text for people beside the data: best practice, and more than a logbook reads.
        .filter(m -> !m.getMessage().contains("dom-6"))
        .map(m -> m.getSeverity() + " " + m.getLocationString() + ": " + m.getMessage())
        .toList();
  }

  private static FhirValidator validator() {
    var chain =
        new ValidationSupportChain(
            new DefaultProfileValidationSupport(R4),
            new InMemoryTerminologyServerValidationSupport(R4),
            new CommonCodeSystemsTerminologyService(R4));
    return R4.newValidator().registerValidatorModule(new FhirInstanceValidator(chain));
  }
}
