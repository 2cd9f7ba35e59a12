package org.thumbseal.json;

import java.time.Instant;
import java.util.Optional;
import org.thumbseal.record.Correction;
import org.thumbseal.record.Correction.Change;
import org.thumbseal.record.Correction.Said;
import org.thumbseal.record.Correction.Subject;
import org.thumbseal.record.Standing;

/** A correction with everything there can be. */
final class ExampleCorrection {
  private ExampleCorrection() {}

  static Correction complete() {
    return new Correction(
        "c3e980c5-c670-866f-9173-16624f78e6b0",
        new Subject(
            "3f9a1c2e-5b7d-8c41-9e02-6a1d4f8b2c70",
            "0123456789abcdef".repeat(4),
            "k".repeat(43),
            17,
            "20260302T071507Z_SP-014_pass_3f9a1c2e.json"),
        2,
        new Standing(
            Optional.of("SP-41"), Optional.of("typed in a hurry"), Optional.of("wrong pump")),
        new Said(
            new Change(Optional.of("SP-014"), Optional.of("hose was old"), Optional.of(false)),
            Optional.of("it was SP-014 after all"),
            Optional.of("A. Miller"),
            Instant.parse("2026-03-03T08:00:00Z")));
  }
}
