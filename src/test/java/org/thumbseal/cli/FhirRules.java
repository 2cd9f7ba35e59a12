package org.thumbseal.cli;

import ca.uhn.fhir.context.FhirContext;
import ca.uhn.fhir.context.support.DefaultProfileValidationSupport;
import ca.uhn.fhir.parser.IParser;
import ca.uhn.fhir.parser.StrictErrorHandler;
import ca.uhn.fhir.validation.FhirValidator;
import ca.uhn.fhir.validation.ResultSeverityEnum;
import java.util.List;
import java.util.Set;
import java.util.stream.Stream;
import org.hl7.fhir.common.hapi.validation.support.CommonCodeSystemsTerminologyService;
import org.hl7.fhir.common.hapi.validation.support.InMemoryTerminologyServerValidationSupport;
import org.hl7.fhir.common.hapi.validation.support.ValidationSupportChain;
import org.hl7.fhir.common.hapi.validation.validator.FhirInstanceValidator;
import org.hl7.fhir.instance.model.api.IBaseResource;
import org.hl7.fhir.r4.model.CodeSystem;
import org.hl7.fhir.r4.model.CodeSystem.ConceptDefinitionComponent;
import org.hl7.fhir.r5.utils.validation.constants.BestPracticeWarningLevel;

/** FHIR R4 as its reference library for Java has it: HAPI FHIR with the definitions of 4.0.1. */
final class FhirRules {
  private static final FhirContext R4 = FhirContext.forR4();
  private static final DefaultProfileValidationSupport DEFINITIONS =
      new DefaultProfileValidationSupport(R4);

  /**
   * The value set of interpretations is made by filters, which the library does not follow without
   * a server; that the codes are there is for {@link #published}.
   */
  private static final String NOT_LOOKED_UP =
      "None of the codings provided are in the value set 'Observation Interpretation Codes'";

  private static final FhirValidator VALIDATOR = validator();

  private FhirRules() {}

  /** Reads a resource; whatever does not belong there is an exception. */
  static <T extends IBaseResource> T strict(Class<T> type, String json) {
    return parser().parseResource(type, json);
  }

  /** The same for a resource of whatever type. */
  static IBaseResource strict(String json) {
    return parser().parseResource(json);
  }

  /** What the rules of R4 say against a resource. */
  static List<String> complaints(IBaseResource resource) {
    return VALIDATOR.validateWithResult(resource).getMessages().stream()
        .filter(m -> m.getSeverity().compareTo(ResultSeverityEnum.WARNING) >= 0)
        .filter(m -> !m.getMessage().contains(NOT_LOOKED_UP))
        .map(m -> m.getSeverity() + " " + m.getLocationString() + ": " + m.getMessage())
        .toList();
  }

  /** Of the codes of a code system in the definitions of R4, those that have this name. */
  static List<String> published(String system, Set<String> codes) {
    var found = (CodeSystem) DEFINITIONS.fetchCodeSystem(system);
    return concepts(found.getConcept())
        .map(ConceptDefinitionComponent::getCode)
        .filter(codes::contains)
        .sorted()
        .toList();
  }

  private static Stream<ConceptDefinitionComponent> concepts(
      List<ConceptDefinitionComponent> concepts) {
    return concepts.stream().flatMap(c -> Stream.concat(Stream.of(c), concepts(c.getConcept())));
  }

  private static IParser parser() {
    IParser parser = R4.newJsonParser().setParserErrorHandler(new StrictErrorHandler());
    return parser.setOverrideResourceIdWithBundleEntryFullUrl(false);
  }

  /** Best practice (text for people beside the data, a performer) is more than a logbook reads. */
  private static FhirValidator validator() {
    var chain =
        new ValidationSupportChain(
            DEFINITIONS,
            new InMemoryTerminologyServerValidationSupport(R4),
            new CommonCodeSystemsTerminologyService(R4));
    var rules = new FhirInstanceValidator(chain);
    rules.setBestPracticeWarningLevel(BestPracticeWarningLevel.Ignore);
    return R4.newValidator().registerValidatorModule(rules);
  }
}
