package org.thumbseal.capture;

import java.util.Arrays;
import java.util.Locale;
import java.util.Optional;
import org.thumbseal.wire.WireRecord.Reference;

/** What a table counts its pressures from, and in which direction. */
enum PressureSense {
  /** Relative to ambient, negative under vacuum. */
  GAUGE,
  ABSOLUTE,
  /** Below ambient, positive under vacuum. */
  VACUUM;

  static Optional<PressureSense> ofName(String name) {
    String upper = name.toUpperCase(Locale.ROOT);
    return Arrays.stream(values()).filter(s -> s.name().equals(upper)).findFirst();
  }

  /** The reference of {@link #signed} values. */
  Reference reference() {
    return this == ABSOLUTE ? Reference.ABSOLUTE : Reference.GAUGE;
  }

  /** The value as a sensor would send it: vacuum turned into negative gauge pressure. */
  double signed(double pascals) {
    return this == VACUUM ? -pascals : pascals;
  }
}
