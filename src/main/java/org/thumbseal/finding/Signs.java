package org.thumbseal.finding;

import java.util.Optional;
import org.thumbseal.measurement.AmbientPressure;
import org.thumbseal.measurement.AmbientPressure.Origin;
import org.thumbseal.measurement.Measurement;
import org.thumbseal.measurement.PumpEstimate;

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
  private static final double STANDARD_AMBIENT = 101.325;

  /**
   * A pump at its jar.
   *
   * @param rate pumping speed over volume, 1/s
   * @param ultimate pressure the pump itself reaches
   * @param leak vacuum that a leak takes away
   * @param restriction share of the speed that a restriction takes at ambient pressure, about
   * @param ceiling vacuum at which the rise was cut off; absent where it was not
   */
  public record Pump(
      double rate, double ultimate, double leak, double restriction, Optional<Double> ceiling) {

    /** Vacuum that pump and leak come to. */
    double reach() {
      return 1 - ultimate - leak;
    }
  }

  /** The signs of a test. */
  public static Signs of(Measurement measured) {
    double ambient = measured.ambient().map(AmbientPressure::kilopascals).orElse(STANDARD_AMBIENT);
    double open = measured.openVacuum().value();
    return new Signs(
        open / ambient,
        (open + measured.highestRise()) / ambient,
        measured.pump().filter(PumpEstimate::describes).map(p -> pump(p, ambient)),
        measured.ambient().filter(a -> a.origin() != Origin.ALTITUDE).isPresent());
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
