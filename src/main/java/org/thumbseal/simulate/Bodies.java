package org.thumbseal.simulate;

import org.thumbseal.wire.Crc16;
import org.thumbseal.wire.WireRecord.Identity;
import org.thumbseal.wire.WireRecord.Reference;

/** Records as lines of wire protocol 1. */
final class Bodies {
  private Bodies() {}

  static String identity(Identity identity) {
    return seal(
        "I,1",
        identity.sensorId(),
        identity.firmware(),
        identity.reference() == Reference.GAUGE ? "G" : "A",
        identity.lowPascals(),
        identity.highPascals(),
        rate(identity.hertz()));
  }

  static String sample(long counter, long micros, long pascals) {
    return seal("S", counter, micros, pascals);
  }

  static String ambient(long micros, Weather weather) {
    long centiCelsius = Math.round(weather.celsius() * 100);
    return seal("A", micros, Math.round(weather.pascals()), centiCelsius);
  }

  static String key(long micros, boolean down) {
    return seal("K", micros, down ? 1 : 0);
  }

  static String fault(long micros, String code) {
    return seal("F", micros, code);
  }

  /** At most three decimals, and none where there are none. */
  private static String rate(double hertz) {
    long thousandths = Math.round(hertz * 1_000);
    return thousandths % 1_000 == 0
        ? Long.toString(thousandths / 1_000)
        : Double.toString(thousandths / 1_000.0);
  }

  private static String seal(String type, Object... fields) {
    StringBuilder body = new StringBuilder(type);
    for (Object field : fields) {
      body.append(',').append(field);
    }
    return Crc16.seal(body.toString());
  }
}
