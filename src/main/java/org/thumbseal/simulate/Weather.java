package org.thumbseal.simulate;

import org.thumbseal.quantity.StandardAtmosphere;

/**
 * The air around the pump, the jar and the sensor.
 *
 * @param pascals barometric pressure, Pa, above 0
 * @param celsius temperature of the air and of the jar wall, degC
 */
public record Weather(double pascals, double celsius) {
  private static final double ZERO_CELSIUS_KELVIN = 273.15;

  /** Refuses a pressure that is not above 0 and a temperature below absolute zero. */
  public Weather {
    Demand.that(pascals > 0, "ambient pressure must be above 0 Pa");
    Demand.that(celsius > -ZERO_CELSIUS_KELVIN, "temperature must be above -273.15 degC");
  }

  /** A standard day at a geopotential height in metres (-500 to 11 000), at 20 degC indoors. */
  public static Weather atMetres(double metres) {
    return new Weather(StandardAtmosphere.pascalsAt(metres), 20);
  }

  double kelvin() {
    return celsius + ZERO_CELSIUS_KELVIN;
  }
}
