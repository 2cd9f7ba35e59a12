package org.thumbseal.finding;

import static org.thumbseal.finding.Plain.text;

import java.util.ArrayList;
import java.util.List;
import org.thumbseal.finding.Signs.Pump;

/** Findings from the shape of one curve, nothing being known of the pump in its sound state. */
final class Alone {
  private static final double LEAST_LEAK = 0.025;
  private static final double LEAST_RESTRICTION = 0.04;
  private static final String AT_THE_PUMP =
      "What would tell worn pump and leak apart: the vacuum with the pump's own inlet blocked.";
  private static final String ANOTHER_RECORD =
      "What would tell: a record of this pump when it was sound, given with --against.";

  private static final String NOT_THE_PUMP =
      "That is no slow pump: the time limit may be too short for a jar of this size.";
  private static final String NOT_THE_JAR =
      "That is no more than the pump can do: the usual rise may be set too long for this jar.";

  private static final double UNRATED = 0.6;

  /** Set by hand: no simulated pump has papers, so the accuracy tables do not hold them. */
  private static final double BORNE_OUT = 0.85;

  private static final double NOT_BORNE_OUT = 0.3;

  private final Asked asked;
  private final Pump pump;

  private Alone(Asked asked, Pump pump) {
    this.asked = asked;
    this.pump = pump;
  }

  static List<Finding> of(Asked asked, Pump pump) {
    return new Alone(asked, pump).findings();
  }

  private List<Finding> findings() {
    List<Finding> findings = new ArrayList<>();
    if (pump.restriction() > LEAST_RESTRICTION) {
      findings.add(restriction());
    } else if (pump.leak() > LEAST_LEAK) {
      findings.add(leak());
    } else if (pump.reach() < asked.maximum() && pump.ceiling().isEmpty()) {
      worn(findings);
    } else if (asked.isSlow()) {
      findings.add(slow());
    } else if (asked.isFast()) {
      findings.add(fast());
    }
    return findings;
  }

  private Finding restriction() {
    return Finding.of(
        FindingCode.RESTRICTION,
        Strength.confidence(pump.restriction(), LEAST_RESTRICTION, 0.6),
        text(
            "The rise slows down as behind a filter that takes about %.0f %% of the speed at"
                + " first and ever more as the pressure falls.",
            pump.percentRestricted()));
  }

  private Finding leak() {
    return Finding.of(
            FindingCode.LEAK,
            Strength.confidence(pump.leak(), LEAST_LEAK, 0.6),
            text(
                "The course of the rise fits a leak that takes %.1f %% of the air pressure off"
                    + " the vacuum; without it the pump would come to %.0f %%.",
                100 * pump.leak(), 100 * (1 - pump.ultimate())))
        .orElseBy(AT_THE_PUMP);
  }

  /** A low maximum in a rise of the usual shape: the pump, or a leak near its inlet. */
  private void worn(List<Finding> findings) {
    String seen =
        text(
            "The vacuum comes to %.0f %% of the air pressure; %.0f %% are asked for, and neither"
                + " leak nor restriction shows in the course of the rise.",
            100 * pump.reach(), 100 * asked.maximum());
    findings.add(Finding.of(FindingCode.WORN_PUMP, 0.75, seen).orElseBy(AT_THE_PUMP));
    findings.add(Finding.of(FindingCode.LEAK, 0.15, seen).orElseBy(AT_THE_PUMP));
  }

  private Finding slow() {
    String seen =
        text(
            "The rise took %.1f s although it goes on to %.0f %% of the air pressure",
            asked.riseTime(), 100 * pump.reach());
    return asked
        .speed()
        .map(
            s ->
                rated(
                    FindingCode.WORN_PUMP,
                    s.isSlow(),
                    seen + ": if the jar is of the size said, the pump pulls " + s.text() + ".",
                    NOT_THE_PUMP))
        .orElseGet(
            () ->
                Finding.of(FindingCode.WORN_PUMP, UNRATED, seen + ": less speed, or a larger jar.")
                    .orElseBy(ANOTHER_RECORD));
  }

  private Finding fast() {
    String seen =
        text(
            "The rise took %.1f s; less than %.1f s is not usual at a whole jar.",
            asked.riseTime(), asked.usualFrom());
    return asked
        .speed()
        .map(
            s ->
                rated(
                    FindingCode.REDUCED_VOLUME,
                    s.isFast(),
                    seen + " With the whole jar that would be " + s.text() + ".",
                    NOT_THE_JAR))
        .orElseGet(
            () -> Finding.of(FindingCode.REDUCED_VOLUME, UNRATED, seen).orElseBy(ANOTHER_RECORD));
  }

  /** The rated speed bears the suspicion out, or speaks against it. */
  private static Finding rated(FindingCode code, boolean borneOut, String seen, String otherwise) {
    return borneOut
        ? Finding.of(code, BORNE_OUT, seen)
        : Finding.of(code, NOT_BORNE_OUT, seen + " " + otherwise);
  }
}
