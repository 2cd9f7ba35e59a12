package org.thumbseal.visit;

import java.util.Locale;
import java.util.Optional;
import java.util.stream.Stream;

/** What is looked at before a pump is tested, in this order; a closed list, for importers. */
public enum CheckItem {
  /** Gasket and cap of the jar: they fail most. */
  GASKET,
  /** The jar itself. */
  JAR,
  /** Tubing and connectors. */
  TUBING,
  /** The filter between jar and pump: not discoloured, not wet. */
  FILTER,
  /** Mains cord and plug: where they are not sound the pump is not switched on. */
  CORD,
  /** The overflow valve moves freely. */
  OVERFLOW,
  /** The outside is clean. */
  OUTSIDE;

  /** The name in result documents and capture headers. */
  public String code() {
    return name().toLowerCase(Locale.ROOT);
  }

  /** The item of a code; empty where there is none. */
  public static Optional<CheckItem> of(String code) {
    return Stream.of(values()).filter(item -> item.code().equals(code)).findFirst();
  }
}
