package org.thumbseal.measurement;

import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Optional;
import org.thumbseal.quantity.Quantity;

/**
 * What the rise says about the pump, by a model of pump, jar and cooling gas. Nothing is graded on
 * it.
 *
 * @param rate effective pumping speed at the jar over the jar's volume, 1/s
 * @param ultimate pressure that the pump itself reaches, kPa absolute
 * @param exchange time in which the wall warms the gas, s
 * @param leak choked leak over the jar's volume, 1/s of ambient air; absent where none is seen
 * @param resistance what the restriction takes off the pump's speed at ambient pressure, as a share
 *     of the speed, about; absent where none is seen
 * @param ceiling vacuum at which the rise was cut off although the pump could pull on, kPa; absent
 *     where it was not
 * @param perLitre what the jar's volume is needed for; absent where that is not known
 * @param misfit how well the model describes the rise
 * @param distrust why it is not to be relied on; empty when it is
 */
public record PumpEstimate(
    Budgeted rate,
    Budgeted ultimate,
    Quantity exchange,
    Optional<Budgeted> leak,
    Optional<Quantity> resistance,
    Optional<Double> ceiling,
    Optional<Flows> perLitre,
    Misfit misfit,
    Optional<Distrust> distrust) {

  /** Why an estimate is not to be relied on. */
  public enum Distrust {
    /** Too little of the curve is there. */
    TOO_SHORT("too short: the rise covers less than 1.5 time constants of this pump and jar"),
    /** Another curve. */
    MISFIT("misfit: this is not the curve of a pump at a jar alone"),
    /** The parameters hang together too closely. */
    UNDETERMINED("undetermined: other pumps would give this curve as well"),
    /** The model of the restriction decides. */
    RESTRICTED("restriction: the speed of the pump behind it depends on its kind");

    private final String text;

    Distrust(String text) {
      this.text = text;
    }

    /** A word and a sentence. */
    public String text() {
      return text;
    }
  }

  /**
   * Flows of air at ambient pressure, L/min.
   *
   * @param pumpingSpeed effective pumping speed at the jar
   * @param freeAirFlow what the pump takes from the open air
   * @param leak what leaks in below 0.528 of ambient; absent where no leak is seen
   */
  public record Flows(Budgeted pumpingSpeed, Budgeted freeAirFlow, Optional<Budgeted> leak) {
    private void into(Map<String, Budgeted> budgeted) {
      budgeted.put("pumpingSpeed", pumpingSpeed);
      budgeted.put("freeAirFlow", freeAirFlow);
      leak.ifPresent(q -> budgeted.put("leakWhilePumping", q));
    }
  }

  /**
   * What lies between model and readings.
   *
   * @param rms root mean square of the residuals, kPa
   * @param noise standard deviation that the same points have without any misfit, kPa
   * @param lag1 autocorrelation of neighbouring residuals, -1 to 1
   */
  public record Misfit(double rms, double noise, double lag1) {}

  /** What it measured that may be relied on, by the names of the result document. */
  public Map<String, Budgeted> budgeted() {
    Map<String, Budgeted> budgeted = new LinkedHashMap<>();
    if (trusted()) {
      perLitre.ifPresent(flows -> flows.into(budgeted));
      budgeted.put("ultimatePressure", ultimate);
    }
    return budgeted;
  }

  /** Whether its quantities may be relied on. */
  public boolean trusted() {
    return distrust.isEmpty();
  }

  /** Whether the model describes the rise, even if it does not tell the speed apart. */
  public boolean describes() {
    return distrust
        .filter(d -> d != Distrust.RESTRICTED)
        .filter(d -> d != Distrust.TOO_SHORT || ceiling.isEmpty())
        .isEmpty();
  }
}
