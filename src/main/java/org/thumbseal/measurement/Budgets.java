package org.thumbseal.measurement;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import org.thumbseal.measurement.Contribution.Input;
import org.thumbseal.measurement.Steps.Level;

/**
 * The quantities of a test with their budgets, and in words how each was reached.
 *
 * @param located where the parts of the test are
 * @param errors what the sensor adds
 * @param open the open vacuum, kPa
 * @param riseLimit the rise that is timed, kPa
 */
record Budgets(Located located, SensorErrors errors, double open, double riseLimit) {
  /** Half of a quarter of a sample period: what the fits leave of it. */
  private static final double SAMPLING = 0.125;

  Budgeted occludedAt() {
    Blocking blocking = located.blocking();
    List<Contribution> budget = new ArrayList<>(List.of(blocking.contribution(1)));
    budget.addAll(located.clock().ofInstant());
    return new Budgeted(located.trueTime(blocking.seconds()), "s", budget);
  }

  Budgeted openVacuum() {
    return new Budgeted(
            open,
            "kPa",
            errors.ofLevel(open, located.rest().openError(), "mean over the open phase"))
        .reached(openSpan());
  }

  private String openSpan() {
    double end = located.blocking().seconds();
    if (!located.rest().hasOpen()) {
      return "First reading of the record, which begins with the blocking.";
    }
    double begin =
        located
            .rest()
            .idle()
            .map(Level::to)
            .orElseGet(() -> located.recorded().curve().firstTime());
    return text(
        "Mean from %.2f s to the blocking at %.2f s.",
        located.trueTime(Math.max(begin, end - Rest.OPEN_SPAN)), located.trueTime(end));
  }

  Budgeted maximum(Plateau plateau) {
    return new Budgeted(
            plateau.kilopascals(),
            "kPa",
            errors.ofLevel(
                plateau.kilopascals(), plateau.standardUncertainty(), "mean of the seconds used"))
        .reached(
            text(
                "Highest 1 s mean; those between %.2f and %.2f s are alike within the noise and were"
                    + " taken together.",
                located.trueTime(plateau.from()), located.trueTime(plateau.to())));
  }

  /** Time on the true clock; errors of the level turn into time over the slope at the crossing. */
  Budgeted riseTime(Crossing crossing) {
    double device = crossing.seconds() - located.blocking().seconds();
    List<Contribution> budget = new ArrayList<>();
    levels(crossing).forEach(c -> budget.add(c.through("kPa", 1 / crossing.slope())));
    budget.add(located.blocking().contribution(-1));
    budget.add(
        Contribution.of(
            "sampling",
            Input.rectangular(0, SAMPLING * located.recorded().curve().period(), "s"),
            "an eighth of the sample period"));
    budget.add(located.clock().contribution(device));
    budget.addAll(located.clock().ofSpan());
    return new Budgeted(located.trueTime(device), "s", budget).reached(crossed(crossing));
  }

  private List<Contribution> levels(Crossing crossing) {
    List<Contribution> levels = new ArrayList<>(errors.ofRise(riseLimit));
    levels.add(new Contribution("noise", crossing.levelError(), "scatter at the crossing"));
    levels.add(new Contribution("open", located.rest().openError(), "scatter of the open vacuum"));
    return levels;
  }

  private String crossed(Crossing crossing) {
    return text(
        "Blocked at %.3f s; %.2f kPa (%.2f open and a rise of %.2f) crossed at %.3f s, climbing"
            + " by %.3f kPa/s.",
        located.trueTime(located.blocking().seconds()),
        open + riseLimit,
        open,
        riseLimit,
        located.trueTime(crossing.seconds()),
        crossing.slope());
  }

  private static String text(String format, Object... values) {
    return String.format(Locale.ROOT, format, values);
  }
}
