package org.thumbseal.cli;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import ca.uhn.fhir.parser.DataFormatException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Set;
import java.util.stream.Collectors;
import org.hl7.fhir.r4.model.Bundle;
import org.hl7.fhir.r4.model.Device;
import org.hl7.fhir.r4.model.Observation;
import org.hl7.fhir.r4.model.Provenance;
import org.hl7.fhir.r4.model.Quantity;
import org.hl7.fhir.r4.model.Resource;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.thumbseal.json.ExampleDocument;
import org.thumbseal.json.JsonGate;
import tools.jackson.databind.node.ObjectNode;

/** FHIR as HAPI FHIR 8.2.0 reads it strictly, against the definitions of R4 (4.0.1). */
class FhirExportTest {
  @TempDir private Path folder;
  private ExportedResults here;

  @BeforeEach
  void empty() throws Exception {
    here = new ExportedResults(folder);
  }

  private Bundle bundle(Object... more) {
    CommandRun run =
        here.export(
            List.of(List.of("--as", "fhir"), List.of(more)).stream()
                .flatMap(List::stream)
                .toArray());
    return FhirRules.strict(Bundle.class, run.out());
  }

  private static <T extends Resource> List<T> all(Bundle bundle, Class<T> type) {
    return bundle.getEntry().stream()
        .map(Bundle.BundleEntryComponent::getResource)
        .filter(type::isInstance)
        .map(type::cast)
        .toList();
  }

  @Test
  void aTestWithItsPumpItsSensorAndItsSeal() throws Exception {
    Path file = here.store(1, "SP-014");
    String signature = JsonGate.read(file).get("signature").stringValue();

    Bundle bundle = bundle();
    Observation test = all(bundle, Observation.class).get(0);
    Provenance seal = all(bundle, Provenance.class).get(0);

    assertThat(test.getIdPart()).isEqualTo(JsonGate.read(file).get("id").stringValue());
    assertThat(test.getStatus()).isEqualTo(Observation.ObservationStatus.FINAL);
    assertThat(test.getInterpretationFirstRep().getCodingFirstRep().getCode()).isEqualTo("N");
    assertThat(target(bundle, test.getSubject().getReference()).getIdentifierFirstRep().getValue())
        .isEqualTo("SP-014");
    assertThat(target(bundle, test.getDevice().getReference()).getIdentifierFirstRep().getValue())
        .isEqualTo("TS-0007");
    Quantity rise = Objects.requireNonNull(quantities(test).get("rise_time_s"));
    assertThat(rise.getValue()).isEqualByComparingTo("7.42");
    assertThat(rise.getCode()).isEqualTo("s");
    assertThat(rise.getSystem()).isEqualTo("http://unitsofmeasure.org");
    Quantity expanded = Objects.requireNonNull(quantities(test).get("maximum_vacuum_expanded_kpa"));
    assertThat(expanded.getValue()).isEqualByComparingTo("1.4");
    assertThat(new String(seal.getSignatureFirstRep().getData(), StandardCharsets.US_ASCII))
        .isEqualTo(signature);
    assertThat(seal.getTargetFirstRep().getReference()).isEqualTo("urn:uuid:" + test.getIdPart());
  }

  private static Map<String, Quantity> quantities(Observation test) {
    return test.getComponent().stream()
        .filter(Observation.ObservationComponentComponent::hasValueQuantity)
        .collect(
            Collectors.toMap(
                c -> c.getCode().getCodingFirstRep().getCode(),
                Observation.ObservationComponentComponent::getValueQuantity));
  }

  private static Device target(Bundle bundle, String reference) {
    return (Device)
        bundle.getEntry().stream()
            .filter(e -> e.getFullUrl().equals(reference))
            .findFirst()
            .orElseThrow()
            .getResource();
  }

  @Test
  void whatIsVoidCorrectedOrNotSealedWellIsNotFinal() throws Exception {
    here.amend(here.store(1, "SP-1"), "--void", "--reason", "wrong hose");
    here.amend(here.store(2, "SP-2"), "--asset", "SP-3");
    ExportedResults.spoil(here.store(3, "SP-3"));

    Bundle bundle = bundle("--unverified");

    assertThat(all(bundle, Observation.class))
        .extracting(o -> o.getStatus().toCode())
        .containsExactly("entered-in-error", "amended", "unknown");
    assertThat(all(bundle, Observation.class))
        .extracting(o -> o.getMeta().getTagFirstRep().getCode())
        .containsExactly("trusted-key", "trusted-key", "broken-seal");
    // SP-1, SP-3 of both, and the sensor
    assertThat(all(bundle, Device.class)).hasSize(3);
  }

  @Test
  void theRulesOfTheStandardHaveNothingAgainstIt() throws Exception {
    here.store(1);
    ObjectNode other = ExampleDocument.unsealed(2);
    ((ObjectNode) other.get("test")).remove("startedAt");
    other.remove("asset");
    other.put("verdict", "inconclusive");
    ((ObjectNode) other.get("measurements"))
        .putObject("leakRate")
        .put("value", 12.5)
        .put("unit", "mL/min")
        .put("bound", "upper");
    here.store(other);

    Bundle bundle = bundle();

    assertThat(FhirRules.complaints(bundle)).isEmpty();
    assertThat(here.export("--as", "fhir-ndjson").out().lines().map(FhirRules::strict)).hasSize(6);
  }

  @Test
  void theInterpretationsAreCodesOfTheStandard() {
    String system = "http://terminology.hl7.org/CodeSystem/v3-ObservationInterpretation";

    assertThat(FhirRules.published(system, Set.of("N", "A", "IND", "PASS")))
        .containsExactly("A", "IND", "N");
  }

  /** Else the test above could not fail. */
  @Test
  void theRulesSeeWhatIsWrong() throws Exception {
    here.store(1);
    String good = here.export("--as", "fhir").out();

    assertThatThrownBy(
            () -> FhirRules.strict(Bundle.class, good.replaceFirst("\"status\"", "\"state\"")))
        .isInstanceOf(DataFormatException.class);
    Bundle bundle =
        FhirRules.strict(Bundle.class, good.replaceFirst("\"code\":\"kPa\"", "\"code\":\"kPaa\""));
    assertThat(FhirRules.complaints(bundle)).anyMatch(c -> c.contains("kPaa"));
  }

  @Test
  void theRegisterSaysWhatAPumpIs() throws Exception {
    here.store(1);
    Path register =
        Files.writeString(
            folder.resolve("pumps.csv"),
            "id,description,location,serial\nSP-1,Portable suction pump,Ward 3,A-77\n");

    Device pump = all(bundle("--register", register), Device.class).get(0);

    assertThat(pump.getSerialNumber()).isEqualTo("A-77");
    assertThat(pump.getDeviceNameFirstRep().getName()).isEqualTo("Portable suction pump");
    assertThat(pump.getLocation().getDisplay()).isEqualTo("Ward 3");
  }

  @Test
  void nothingToExportIsABundleToo() throws Exception {
    ExportedResults.spoil(here.store(1, "SP-1"));

    assertThat(bundle().getEntry()).isEmpty();
  }
}
