package org.thumbseal.simulate;

/**
 * Two tests of one pump with one jar, sensor and place: sound, and later perhaps with a fault. The
 * weather, the thumb, the noise and the zero of the sensor differ from the one day to the other.
 *
 * <p>Drawn far wider than the ready-made kinds: jars of 0.5 to 5 L, pumps of 10 to 60 L/min, heat
 * transfer 3 to 20 W/(m2 K), faults from barely visible to gross. The fault stands in the plant of
 * {@code later}.
 *
 * @param sound the record of the sound pump
 * @param later the record to be judged
 */
public record PumpHistory(Scenario sound, Scenario later) {

  /** The history of a pump that ends with a fault of this kind; the same for the same seed. */
  public static PumpHistory of(FaultKind kind, long seed, Breadth breadth) {
    return new HistoryDraw(kind, seed, breadth).history();
  }
}
