package org.thumbseal.wire;

import java.util.Arrays;
import java.util.Locale;
import java.util.Optional;
import org.thumbseal.wire.WireRecord.Reference;

/** What numbers of pressure count from, and in which direction. */
public enum PressureSense {
  /** Relative to ambient, negative under vacuum. */
  GAUGE,
  /** Relative to vacuum. */
  ABSOLUTE,
  /** Below ambient, positive under vacuum. */
  VACUUM;

  /** The sense of a name; capitals do not matter. */
  public static Optional<PressureSense> ofName(String name) {
    String upper = name.toUpperCase(Locale.ROOT);
    return Arrays.stream(values()).filter(s -> s.name().equals(upper)).findFirst();
  }

  /** The reference of {@link #signed} values. */
  public Reference reference() {
    return this == ABSOLUTE ? Reference.ABSOLUTE : Reference.GAUGE;
  }

  /** The value as a sensor would send it: vacuum turned into negative gauge pressure. */
  public double signed(double pascals) {
    return this == VACUUM ? -pascals : pascals;
  }
}
