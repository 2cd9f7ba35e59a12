package org.thumbseal.simulate;

/**
 * From pressure to number.
 *
 * @param offset added to every reading, Pa
 * @param gainError of the reading: 0.01 reads 1 % too much
 * @param noise rms of white noise, Pa
 * @param step of quantisation, Pa; 0 for none but the whole pascals of the wire
 */
public record Transducer(double offset, double gainError, double noise, double step) {
  /** A sensor that only rounds to whole pascals. */
  public static final Transducer IDEAL = new Transducer(0, 0, 0, 0);

  /** Refuses negative noise and a negative step. */
  public Transducer {
    Demand.notNegative(noise, "noise");
    Demand.notNegative(step, "quantisation step");
  }

  /** The same sensor with its zero moved, Pa. */
  public Transducer shifted(double pascals) {
    return new Transducer(offset + pascals, gainError, noise, step);
  }

  /** The same sensor with another gain error. */
  public Transducer gaining(double error) {
    return new Transducer(offset, error, noise, step);
  }

  double read(double pascals, double disturbance) {
    double raw = pascals * (1 + gainError) + offset + disturbance;
    return step > 0 ? Math.rint(raw / step) * step : raw;
  }
}
