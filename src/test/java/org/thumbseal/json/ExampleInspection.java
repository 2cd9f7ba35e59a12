package org.thumbseal.json;

import java.time.Instant;
import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import org.thumbseal.care.Inspection;
import org.thumbseal.care.Work;

/** An inspection with everything that one can have. */
public final class ExampleInspection {
  private ExampleInspection() {}

  /** Invented. */
  public static Inspection complete() {
    return new Inspection(
        "6a1f0c52-8d3e-8b71-9c44-2f60aa10bb01",
        new Inspection.Said(
            "SP-014",
            new Inspection.Done(Work.YEARLY_INSPECTION, LocalDate.parse("2026-03-02"), false),
            "M. Otieno",
            new Inspection.More(
                Optional.of("earth lead loose"),
                List.of(
                    new Inspection.Answer("runs", "no"),
                    new Inspection.Answer(
                        "hums", "yes", Optional.of(new Inspection.Asked("Does it hum?", "yes")))),
                Optional.of(
                    new Inspection.Outcome("stuck", "It is stuck.", "Refer it.", "a technician")))),
        Instant.parse("2026-03-02T08:30:00.250Z"));
  }
}
