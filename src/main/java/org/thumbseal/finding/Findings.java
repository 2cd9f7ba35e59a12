package org.thumbseal.finding;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import org.thumbseal.grade.Grade;
import org.thumbseal.grade.Verdict;
import org.thumbseal.measurement.Measurement;
import org.thumbseal.measurement.PumpEstimate;

/** What a test suggests is wrong, surest first. */
public final class Findings {
  /** An inlet that grew narrower since the pump was sound, as a share of ambient. */
  private static final double NARROWER = 0.012;

  private Findings() {}

  /**
   * The findings of a test; none where it is not valid.
   *
   * @param sound signs of the same pump when it was sound
   */
  public static List<Finding> of(Measurement measured, Grade grade, Optional<Signs> sound) {
    if (grade.verdict() == Verdict.INVALID) {
      return List.of();
    }
    Signs now = Signs.of(measured);
    Asked asked = asked(measured, grade);
    List<Finding> findings = new ArrayList<>();
    Plain.noVacuum(now).ifPresent(findings::add);
    if (findings.isEmpty()) {
      Plain.blockedInlet(now, usualOpen(asked, sound)).ifPresent(findings::add);
      Plain.control(now).ifPresent(findings::add);
    }
    if (findings.isEmpty() && now.pump().isPresent()) {
      shaped(now, asked, sound).forEach(findings::add);
    }
    findings.sort(Comparator.comparingDouble(Finding::confidence).reversed());
    return findings;
  }

  private static List<Finding> shaped(Signs now, Asked asked, Optional<Signs> sound) {
    Signs.Pump pump = now.pump().orElseThrow();
    return sound
        .filter(s -> s.pump().isPresent())
        .map(
            s ->
                AgainstSound.of(pump, s.pump().get(), now.ambientMeasured() && s.ambientMeasured())
                    .stream()
                    .toList())
        .orElseGet(() -> Alone.of(asked, pump));
  }

  private static double usualOpen(Asked asked, Optional<Signs> sound) {
    return sound.map(s -> s.open() + NARROWER).filter(v -> v < asked.open()).orElse(asked.open());
  }

  private static Asked asked(Measurement measured, Grade grade) {
    double ambient = Signs.ambient(measured);
    return new Asked(
        grade.limits().maximumKilopascals() / ambient,
        grade.criteria().openKilopascals() / ambient,
        measured.riseTime().map(q -> q.value()).orElse(Double.NaN),
        grade.criteria().riseSeconds(),
        grade.criteria().usualRiseFrom(),
        grade
            .criteria()
            .equipment()
            .ratedLitresPerMinute()
            .flatMap(rated -> speed(measured).map(s -> new Asked.Speed(s, rated))));
  }

  private static Optional<Double> speed(Measurement measured) {
    return measured
        .pump()
        .filter(PumpEstimate::trusted)
        .flatMap(PumpEstimate::perLitre)
        .map(flows -> flows.pumpingSpeed().value());
  }
}
