package org.thumbseal.simulate;

import java.util.List;
import org.thumbseal.wire.WireRecord.Identity;
import org.thumbseal.wire.WireRecord.Reference;

/** Draws the sensor and the line of a kind. */
final class SensorDraw {
  private static final int GAUGE_LOW = -115_000;
  private static final int GAUGE_HIGH = 15_000;
  private static final int ABSOLUTE_HIGH = 120_000;
  private static final long WRAP = 1L << 32;
  private static final double CLOCK_ERROR = 1e-4;
  private static final double JITTER_SECONDS = 5e-5;

  private final Draw draw;
  private final Conditions conditions;

  SensorDraw(Conditions conditions, Draw draw) {
    this.draw = draw;
    this.conditions = conditions;
  }

  Sensor sensor(SimulationKind kind) {
    double hertz = conditions.hertz().orElse(draw.oneOf(List.of(50.0, 100.0, 200.0)));
    Identity identity = kind == SimulationKind.RANGE_CLIPPED ? narrow(hertz) : wide(hertz);
    Upsets upsets = kind == SimulationKind.IDLE ? upsets() : Upsets.NONE;
    // Without a barometer nobody could know that limits are to be adjusted.
    boolean barometer = kind == SimulationKind.ALTITUDE || draw.chance(0.7);
    return new Sensor(identity, transducer(), upsets, ticks(), barometer);
  }

  Line line(SimulationKind kind) {
    double burst = draw.oneOf(List.of(0.0, 0.001, 0.016, 0.1));
    boolean half = draw.chance(0.5);
    return kind == SimulationKind.NOISY_LINE
        ? new Line(burst, 0.003, 0.007, true)
        : new Line(burst, 0, 0, half);
  }

  private Identity wide(double hertz) {
    return draw.chance(0.2)
        ? identity(Reference.ABSOLUTE, 0, ABSOLUTE_HIGH, hertz)
        : identity(Reference.GAUGE, GAUGE_LOW, GAUGE_HIGH, hertz);
  }

  private Identity narrow(double hertz) {
    int low = -1_000 * (70 + draw.below(10));
    return identity(Reference.GAUGE, low, GAUGE_HIGH, hertz);
  }

  private static Identity identity(Reference reference, int low, int high, double hertz) {
    return new Identity("SIM-01", "1.0.0", reference, low, high, hertz);
  }

  private Transducer transducer() {
    double offset = draw.between(-300, 300);
    double noise = draw.between(20, 120);
    return new Transducer(offset, 0, noise, draw.oneOf(List.of(1.0, 10.0, 56.0, 112.0)));
  }

  private Upsets upsets() {
    double hours = draw.between(0.5, 3);
    return new Upsets(1e-4, 5_000, draw.between(20, 100), 3600 * hours);
  }

  private Ticks ticks() {
    boolean wraps = draw.chance(0.5);
    long counter = wraps ? WRAP - 1 - draw.below(4_000) : draw.below(1_000);
    long micros = wraps ? WRAP - 5_000_000 - draw.below(15_000_000) : 1_200_345;
    return new Ticks(counter, micros, draw.between(-CLOCK_ERROR, CLOCK_ERROR), JITTER_SECONDS);
  }
}
