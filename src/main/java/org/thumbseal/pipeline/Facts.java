package org.thumbseal.pipeline;

import java.util.Optional;
import org.thumbseal.capture.CaptureHeader;
import org.thumbseal.measurement.AmbientPressure;
import org.thumbseal.measurement.AmbientPressure.Origin;
import org.thumbseal.quantity.StandardAtmosphere;
import org.thumbseal.wire.WireRecord.Ambient;

/** Ambient pressure and numbers from the options, the header and the sensor, in that order. */
final class Facts {
  private static final double PASCALS = 1_000;

  /** A barometer read by hand: +-0.5 kPa, rectangular (common practice). */
  private static final double GIVEN = 0.5 / Math.sqrt(3);

  /** A sensor's own barometer: +-0.3 kPa, rectangular (common practice). */
  private static final double BAROMETER = 0.3 / Math.sqrt(3);

  /** Weather moves the pressure by some 3 kPa about the standard value (from memory). */
  private static final double WEATHER = 3 / Math.sqrt(3);

  private Facts() {}

  static Optional<AmbientPressure> ambient(
      GradingSettings settings, CaptureHeader header, Optional<Ambient> said) {
    return settings
        .place()
        .ambientKilopascals()
        .or(() -> number(header, "ambient-kpa"))
        .map(p -> new AmbientPressure(p, GIVEN, Origin.GIVEN))
        .or(() -> said.flatMap(Facts::barometer))
        .or(
            () ->
                settings
                    .place()
                    .altitudeMetres()
                    .or(() -> number(header, "altitude-m"))
                    .map(Facts::atAltitude));
  }

  private static Optional<AmbientPressure> barometer(Ambient ambient) {
    double pressure = ambient.pascals().orElse(0) / PASCALS;
    return AmbientPressure.isPlausible(pressure)
        ? Optional.of(new AmbientPressure(pressure, BAROMETER, Origin.SENSOR))
        : Optional.empty();
  }

  private static AmbientPressure atAltitude(double metres) {
    double pressure = StandardAtmosphere.pascalsAt(metres) / PASCALS;
    return new AmbientPressure(pressure, WEATHER, Origin.ALTITUDE);
  }

  /** A number in a header line; empty where it is none or out of all bounds. */
  static Optional<Double> number(CaptureHeader header, String key) {
    try {
      return header
          .fact(key)
          .map(Double::valueOf)
          .filter(v -> v >= -500 && v <= 11_000)
          .filter(v -> !key.equals("ambient-kpa") || AmbientPressure.isPlausible(v))
          .filter(v -> !key.equals("jar-l") || v > 0)
          .filter(v -> !key.equals(CaptureHeader.RATED_SPEED) || (v >= 0.1 && v <= 1_000));
    } catch (NumberFormatException e) {
      return Optional.empty();
    }
  }
}
