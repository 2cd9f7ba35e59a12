package org.thumbseal.seal;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import org.thumbseal.json.Canonical;
import org.thumbseal.json.ExampleDocument;
import org.thumbseal.json.Json;
import tools.jackson.databind.node.ObjectNode;

/** Whose key it is and of which time its documents are trusted, as the trust files say. */
class TrustValidityTest {
  private static final SigningKey KEY = SigningKey.generate();

  @TempDir private Path folder;

  private SealVerifier trusting(String... namesAndValues) throws Exception {
    write("a.jwk", namesAndValues);
    return new SealVerifier(TrustStore.load(List.of(folder)));
  }

  private Path write(String file, String... namesAndValues) throws IOException {
    ObjectNode jwk = KEY.verifyingKey().jwk();
    for (int i = 0; i < namesAndValues.length; i += 2) {
      jwk.put(namesAndValues[i], namesAndValues[i + 1]);
    }
    return Files.writeString(folder.resolve(file), Canonical.text(jwk));
  }

  private static ObjectNode startedAt(String time) {
    ObjectNode document = ExampleDocument.unsealed();
    ((ObjectNode) document.get("test")).put("startedAt", time);
    return Seal.seal(document, LedgerPosition.FIRST, KEY);
  }

  /** A date is a whole day, UTC (RFC 3339 section 5.6 has the forms); both ends count. */
  @ParameterizedTest
  @CsvSource({
    "2026-03-02,           2026-03-02,           2026-03-02T00:00:00Z,      true",
    "2026-03-02,           2026-03-02,           2026-03-02T23:59:59.999Z,  true",
    "2026-03-02,           2026-03-02,           2026-03-01T23:59:59.999Z,  false",
    "2026-03-02,           2026-03-02,           2026-03-03T00:00:00Z,      false",
    "2026-03-02,           ,                     2099-01-01T00:00:00Z,      true",
    "2026-03-02,           ,                     2026-03-01T00:00:00Z,      false",
    ",                     2026-03-02,           1999-01-01T00:00:00Z,      true",
    ",                     2026-03-02T07:15:00Z, 2026-03-02T07:15:00.000Z,  true",
    ",                     2026-03-02T07:15:00Z, 2026-03-02T07:15:00.001Z,  false",
    "2026-03-02T08:15:00+01:00, ,                2026-03-02T07:15:00Z,      true",
    "2026-03-02T08:15:00+01:00, ,                2026-03-02T07:14:59Z,      false",
    "2026-03-02T08:15:00+01:00, ,                2026-03-02T10:00:00+03:00, false",
  })
  void documentsOfThatTimeAreTrusted(String from, String until, String time, boolean trusted)
      throws Exception {
    ObjectNode jwk = KEY.verifyingKey().jwk().put("name", "Night shift");
    if (from != null) {
      jwk.put("validFrom", from);
    }
    if (until != null) {
      jwk.put("validUntil", until);
    }
    Files.writeString(folder.resolve("a.jwk"), Canonical.text(jwk));
    SealCheck check = new SealVerifier(TrustStore.load(List.of(folder))).check(startedAt(time));

    assertThat(check.answer()).isEqualTo(trusted ? SealAnswer.TRUSTED_KEY : SealAnswer.UNKNOWN_KEY);
    assertThat(check.signer())
        .isEqualTo(trusted ? "Night shift" : KEY.verifyingKey().fingerprint());
    assertThat(check.reason().isEmpty()).isEqualTo(trusted);
  }

  @Test
  void theRemarkSaysWhoseKeyAndWhichTimes() throws Exception {
    SealVerifier verifier =
        trusting("name", "Night shift", "validFrom", "2026-01-01", "validUntil", "2026-02-28");

    assertThat(verifier.check(startedAt("2026-03-02T08:15:00+01:00")).reason())
        .isEqualTo(
            "it is of 2026-03-02T07:15:00Z, and the key of Night shift is trusted"
                + " from 2026-01-01 until 2026-02-28 only");
  }

  /** The time at which it was sealed, as near as a document says it; not that of what it is on. */
  @Test
  void calibrationsAndCorrectionsHaveTimesOfTheirOwn() throws Exception {
    SealVerifier verifier = trusting("validUntil", "2026-03-31");
    ObjectNode calibration = Json.object().put("calibratedAt", "2026-04-01T00:00:00Z");
    ObjectNode correction =
        ExampleDocument.unsealed().put("correctedAt", "2026-04-01T00:00:00.000Z");

    for (ObjectNode late : List.of(calibration, correction)) {
      assertThat(verifier.check(Seal.seal(late, LedgerPosition.FIRST, KEY)).answer())
          .isEqualTo(SealAnswer.UNKNOWN_KEY);
    }
    assertThat(verifier.check(startedAt("2026-03-31T23:59:59Z")).answer())
        .isEqualTo(SealAnswer.TRUSTED_KEY);
  }

  @ParameterizedTest
  @ValueSource(strings = {"", "yesterday", "2026-03-02", "2026-13-02T00:00:00Z"})
  void withoutATimeThereIsNothingToHoldAgainstIt(String time) throws Exception {
    SealCheck check = trusting("validUntil", "2026-03-01").check(startedAt(time));

    assertThat(check.answer()).isEqualTo(SealAnswer.TRUSTED_KEY);
    assertThat(check.reason()).startsWith("it bears no date, and ");
  }

  @Test
  void anAlteredDocumentIsBrokenWhateverItsTime() throws Exception {
    ObjectNode altered = startedAt("2026-03-02T00:00:00Z").put("verdict", "fail");

    assertThat(trusting("validUntil", "2026-01-01").check(altered).answer())
        .isEqualTo(SealAnswer.BROKEN_SEAL);
  }

  @ParameterizedTest
  @CsvSource({
    "validFrom,  soon",
    "validFrom,  ''",
    "validFrom,  2026-02-30",
    "validFrom,  26-02-03",
    "validFrom,  02/03/2026",
    "validUntil, 2026-03-02T07:15Z",
    "validUntil, 2026-03-02 07:15:00Z",
    "validUntil, 2026-03-02T07:15:00",
    "validUntil, 2026-03-02T25:15:00Z",
    "validUntil, +12026-03-02",
    "validUntil, -2026-03-02",
    "validUntil, 99999-03-02",
  })
  void whatIsNoDateIsRefused(String name, String value) throws Exception {
    Path file = write("a.jwk", name, value);

    assertThatThrownBy(() -> TrustStore.load(List.of(folder)))
        .isInstanceOf(KeyException.class)
        .hasMessageStartingWith(file + ": \"" + name + "\" is no date such as 2026-03-02");
  }

  @Test
  void datesThatAreNoTextAreRefused() throws Exception {
    Path file = folder.resolve("a.jwk");
    Files.writeString(file, Canonical.text(KEY.verifyingKey().jwk().put("validUntil", 2026)));
    assertThatThrownBy(() -> TrustStore.load(List.of(file))).hasMessageContaining("is no date");
    Files.writeString(file, Canonical.text(KEY.verifyingKey().jwk().putNull("validUntil")));
    assertThatThrownBy(() -> TrustStore.load(List.of(file))).hasMessageContaining("is no date");
  }

  @Test
  void anEndBeforeTheBeginningIsRefused() throws Exception {
    Path file = write("a.jwk", "validFrom", "2026-03-02", "validUntil", "2026-03-01");

    assertThatThrownBy(() -> TrustStore.load(List.of(folder)))
        .hasMessage(file + ": \"validUntil\" is before \"validFrom\"");
    write("a.jwk", "validFrom", "2026-03-02T12:00:00Z", "validUntil", "2026-03-02");
    assertThat(TrustStore.load(List.of(folder)).size()).isEqualTo(1);
  }

  /** The own key beside the private one has neither name nor dates; a second file may add them. */
  @Test
  void aKeySaidTwiceIsLimitedByBoth() throws Exception {
    write("b.jwk", "name", "Night shift", "validUntil", "2026-03-01");
    write("c.jwk", "validFrom", "2026-02-01", "validUntil", "2026-04-01");
    SealVerifier verifier = trusting();

    assertThat(verifier.check(startedAt("2026-02-15T00:00:00Z")).signer()).isEqualTo("Night shift");
    for (String outside : List.of("2026-01-31T00:00:00Z", "2026-03-15T00:00:00Z")) {
      assertThat(verifier.check(startedAt(outside)).reason())
          .endsWith("the key of Night shift is trusted from 2026-02-01 until 2026-03-01 only");
    }
  }

  @Test
  void namesCannotSteerATerminal() throws Exception {
    SealVerifier verifier = trusting("name", "\u202eAnna\u001b[2J\n", "validUntil", "2026-03-01");

    assertThat(verifier.check(startedAt("2026-02-15T00:00:00Z")).signer())
        .isEqualTo("\\u202EAnna\\u001B[2J\\u000A");
    assertThat(verifier.check(startedAt("2026-04-15T00:00:00Z")).reason())
        .contains("\\u202EAnna\\u001B[2J\\u000A")
        .doesNotContain("\u001b", "\u202e", "\n");
  }
}
