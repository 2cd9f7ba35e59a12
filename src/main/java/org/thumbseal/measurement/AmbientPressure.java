package org.thumbseal.measurement;

import org.thumbseal.quantity.Quantity;

/**
 * Barometric pressure at the place of the test.
 *
 * @param kilopascals absolute, kPa
 * @param standardUncertainty kPa
 * @param origin where it is from
 */
public record AmbientPressure(double kilopascals, double standardUncertainty, Origin origin) {
  /** Where an ambient pressure is from; the first that is there is taken. */
  public enum Origin {
    /** Given by the user. */
    GIVEN("given"),
    /** Sent by the sensor's own barometer. */
    SENSOR("sensor"),
    /** Standard atmosphere at the altitude given; the weather moves it by some 3 kPa. */
    ALTITUDE("altitude"),
    /** What an absolute sensor read with the pump off. */
    AT_REST("at-rest");

    private final String code;

    Origin(String code) {
      this.code = code;
    }

    /** The name in result documents. */
    public String code() {
      return code;
    }
  }

  private static final double LOWEST = 40;
  private static final double HIGHEST = 115;

  /** Whether air presses like this anywhere people live: 40 to 115 kPa. */
  public static boolean isPlausible(double kilopascals) {
    return kilopascals >= LOWEST && kilopascals <= HIGHEST;
  }

  /** The pressure as a quantity in kPa. */
  public Quantity quantity() {
    return Quantity.kilopascals(kilopascals, standardUncertainty);
  }
}
