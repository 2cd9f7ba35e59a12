package org.thumbseal.accuracy;

import static org.thumbseal.accuracy.Ranked.text;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.BiPredicate;
import org.thumbseal.grade.Verdict;

/**
 * Verdicts against what the pump deserves by the default criteria.
 *
 * <p>A guarded rule leaves open what the value shows within U of a limit. So where the truth is
 * outside by less than 2 U an error of the sensor may still make it inconclusive; never opposite.
 */
final class VerdictFigures {
  /**
   * A record with its margin in expanded uncertainties, positive for a pump that meets the limits.
   */
  private record Case(double margin, Optional<Verdict> verdict) {
    boolean isRight() {
      return verdict.filter(v -> v == (margin > 0 ? Verdict.PASS : Verdict.FAIL)).isPresent();
    }

    boolean isOpposite() {
      return verdict.filter(v -> v == (margin > 0 ? Verdict.FAIL : Verdict.PASS)).isPresent();
    }
  }

  private final String how;
  private final List<Case> cases;
  private final int records;
  private final long found;

  private VerdictFigures(String how, List<Trial> trials) {
    this.how = how;
    this.records = trials.size();
    this.found = trials.stream().filter(t -> t.measured().isPresent()).count();
    this.cases = trials.stream().flatMap(t -> judged(t).stream()).toList();
  }

  static List<Row> of(String how, List<Trial> trials) {
    VerdictFigures figures = new VerdictFigures(how, trials);
    List<Row> rows = new ArrayList<>();
    rows.add(figures.one());
    rows.add(figures.opposite());
    rows.add(figures.clear());
    rows.add(figures.between());
    rows.add(figures.falsePasses());
    return rows;
  }

  private static Optional<Case> judged(Trial trial) {
    return trial
        .measured()
        .flatMap(
            m ->
                trial
                    .truth()
                    .margin(m)
                    .filter(margin -> !margin.isNaN())
                    .map(margin -> new Case(margin, Optional.of(m.verdict()))));
  }

  private Row one() {
    return Row.judged(
        "one test found, " + how, "100 %", text("%d of %d", found, records), found == records);
  }

  private Row opposite() {
    long outside = count((c, beyond) -> beyond >= 1);
    long opposite = count((c, beyond) -> beyond >= 1 && c.isOpposite());
    return Row.judged(
        "verdict opposite to a truth outside the guard band, " + how,
        "none",
        opposite + " of " + outside,
        opposite == 0);
  }

  private Row clear() {
    long outside = count((c, beyond) -> beyond >= 2);
    long right = count((c, beyond) -> beyond >= 2 && c.isRight());
    return Row.judged(
        "verdict right, truth at least 2 U outside, " + how,
        "100 %",
        right + " of " + outside,
        right == outside);
  }

  private Row between() {
    long outside = count((c, beyond) -> beyond >= 1 && beyond < 2);
    long right = count((c, beyond) -> beyond >= 1 && beyond < 2 && c.isRight());
    return Row.told(
        "verdict right, truth 1 to 2 U outside, " + how,
        right + " of " + outside + ", the others left open");
  }

  private Row falsePasses() {
    long bad = cases.stream().filter(c -> c.margin() < 0).count();
    long passed = cases.stream().filter(c -> c.margin() < 0 && c.isOpposite()).count();
    return Row.judged(
        "false passes, " + how, "none", passed + " of " + bad + " bad pumps", passed == 0);
  }

  private long count(BiPredicate<Case, Double> wanted) {
    return cases.stream().filter(c -> wanted.test(c, Math.abs(c.margin()))).count();
  }
}
