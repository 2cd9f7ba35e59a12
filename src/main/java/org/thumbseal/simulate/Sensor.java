package org.thumbseal.simulate;

import org.thumbseal.wire.WireRecord.Identity;
import org.thumbseal.wire.WireRecord.Reference;

/**
 * A pressure sensor that speaks wire protocol 1.
 *
 * @param identity what it says of itself; its range clips the readings, its rate paces them
 * @param transducer its errors
 * @param upsets spikes and drift
 * @param ticks its clock
 * @param barometer whether it sends the ambient record
 */
public record Sensor(
    Identity identity, Transducer transducer, Upsets upsets, Ticks ticks, boolean barometer) {

  /** Refuses a rate outside 10 to 1000 Hz. */
  public Sensor {
    Demand.that(
        identity.hertz() >= 10 && identity.hertz() <= 1000, "rate must be between 10 and 1000 Hz");
  }

  /** A gauge sensor without errors at a rate in Hz, with a barometer. */
  public static Sensor ideal(double hertz) {
    Identity identity = new Identity("SIM-01", "1.0.0", Reference.GAUGE, -115_000, 15_000, hertz);
    return new Sensor(identity, Transducer.IDEAL, Upsets.NONE, Ticks.PERFECT, true);
  }

  /** The same sensor with other errors. */
  public Sensor with(Transducer other) {
    return new Sensor(identity, other, upsets, ticks, barometer);
  }

  /** The same sensor with other upsets. */
  public Sensor with(Upsets other) {
    return new Sensor(identity, transducer, other, ticks, barometer);
  }

  /** The same sensor with another clock. */
  public Sensor with(Ticks other) {
    return new Sensor(identity, transducer, upsets, other, barometer);
  }

  /** The same sensor under another name, range or rate. */
  public Sensor with(Identity other) {
    return new Sensor(other, transducer, upsets, ticks, barometer);
  }
}
