package org.thumbseal.finding;

import java.util.Optional;
import org.thumbseal.measurement.AmbientPressure;
import org.thumbseal.measurement.AmbientPressure.Origin;
import org.thumbseal.measurement.Measurement;
import org.thumbseal.measurement.PumpEstimate;
import org.thumbseal.quantity.StandardAtmosphere;

/**
 * What of a test tells what is wrong; pressures as shares of ambient, which do not change with
 * altitude and weather.
 *
 * @param open vacuum with the inlet open
 * @param highest vacuum while it was blocked
 * @param pump the pump as the model has it; absent where the model does not describe the rise
 * @param ambientMeasured whether a barometer gave the ambient pressure
 */
public record Signs(double open, double highest, Optional<Pump> pump, boolean ambientMeasured) {
  /** What stands in where the ambient pressure is not known, kPa. */
  private static final double STANDARD_AMBIENT = StandardAtmosphere.SEA_LEVEL_PASCALS / 1_000;

  /**
   * A pump at its jar.
   *
   * @param rate pumping speed over volume, 1/s
   * @param ultimate pressure the pump itself reaches
   * @param leak vacuum that a leak takes away
   * @param restriction its resistance times the pumping speed, at ambient pressure; a number
   * @param ceiling vacuum at which the rise was cut off; absent where it was not
   */
  public record Pump(
      double rate, double ultimate, double leak, double restriction, Optional<Double> ceiling) {

    /** Vacuum that pump and leak come to. */
    double reach() {
      return 1 - ultimate - leak;
    }

    /** What the restriction takes of the speed at ambient pressure, percent, about. */
    double percentRestricted() {
      return 100 * restriction / (1 + restriction);
    }
  }

  /** The signs of a test. */
  public static Signs of(Measurement measured) {
    double ambient = ambient(measured);
    double open = measured.openVacuum().value();
    return new Signs(
        open / ambient,
        (open + measured.highestRise()) / ambient,
        measured.pump().filter(PumpEstimate::describes).map(p -> pump(p, ambient)),
        measured.ambient().filter(a -> a.origin() != Origin.ALTITUDE).isPresent());
  }

  /** Ambient pressure that the shares are of, kPa. */
  static double ambient(Measurement measured) {
    return measured.ambient().map(AmbientPressure::kilopascals).orElse(STANDARD_AMBIENT);
  }

  private static Pump pump(PumpEstimate estimate, double ambient) {
    double rate = estimate.rate().value();
    return new Pump(
        rate,
        estimate.ultimate().value() / ambient,
        estimate.leak().map(q -> q.value() / rate).orElse(0.0),
        estimate.resistance().map(q -> q.value()).orElse(0.0),
        estimate.ceiling().map(v -> v / ambient));
  }
}
