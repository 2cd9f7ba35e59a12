package org.thumbseal.grade;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.function.Predicate;
import org.thumbseal.measurement.Measurement;
import org.thumbseal.measurement.Unblocked;
import org.thumbseal.phase.PhaseDetector;

/**
 * Verdict and reasons of one test.
 *
 * @param verdict the worst of all criteria
 * @param reasons at least one; what decided comes first
 * @param criteria as set
 * @param limits as applied
 */
public record Grade(Verdict verdict, List<Reason> reasons, Criteria criteria, Limits limits) {
  /** Keeps a copy of the reasons. */
  public Grade {
    reasons = List.copyOf(reasons);
  }

  /** Grades a measurement. */
  public static Grade of(Measurement measurement, Criteria criteria) {
    Limits limits = Limits.of(criteria, measurement.ambient());
    Judged test = new Judged(measurement, criteria, limits);
    List<Judgement> validity = Validity.of(test);
    List<Judgement> all = new ArrayList<>(validity);
    Judgement rise = RiseCriterion.of(test);
    all.add(rise);
    all.add(MaximumCriterion.of(test, rise.verdict()));
    all.addAll(Remarks.of(test));
    Verdict worst = all.stream().map(Judgement::verdict).reduce(Verdict.PASS, Verdict::worse);
    return new Grade(worst, reasons(all, worst), criteria, limits);
  }

  /** Grades a start that no blocking followed: nothing can be judged. */
  public static Grade of(Unblocked start, Criteria criteria) {
    String pump =
        start.isPumpSeen()
            ? "Start again, then block the jar inlet with the pump running, and hold."
            : "The pump was not seen to start either: see that it runs, with its hose on the jar and"
                + " the sensor. Start again, then block the jar inlet, and hold.";
    Reason reason =
        new Reason(
            ReasonCode.NOT_BLOCKED,
            Judged.number(
                "The inlet was not blocked within %.0f s of the start. %s",
                PhaseDetector.START_PATIENCE, pump));
    Limits limits = Limits.of(criteria, start.ambient());
    return new Grade(Verdict.INVALID, List.of(reason), criteria, limits);
  }

  /**
   * The same with a word on readings that came without a checksum.
   *
   * @param rejected lines and readings that were left out
   * @param samples readings that were taken
   */
  public Grade withUncheckedLines(long rejected, long samples) {
    List<Reason> more = new ArrayList<>(reasons);
    more.add(UncheckedLines.reason(rejected, samples));
    return new Grade(verdict, more, criteria, limits);
  }

  /**
   * The reasons, worst first, each code once. Where the test cannot be judged, the criteria that
   * would have been met or missed are no reasons.
   */
  private static List<Reason> reasons(List<Judgement> all, Verdict worst) {
    Predicate<Judgement> counts =
        j -> worst != Verdict.INVALID || j.verdict() == Verdict.INVALID || Remarks.isRemark(j);
    List<Reason> reasons = new ArrayList<>();
    all.stream()
        .filter(counts)
        .sorted(Comparator.comparing(Judgement::verdict).reversed())
        .map(Judgement::reason)
        .filter(r -> reasons.stream().noneMatch(other -> other.code() == r.code()))
        .forEach(reasons::add);
    return reasons;
  }
}
