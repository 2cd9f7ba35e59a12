package org.thumbseal.spares;

import java.util.Arrays;
import java.util.Locale;
import java.util.Optional;

/** The columns of a stock file that mean something to the program; any other is kept. */
enum Column {
  PART(true),
  ITEM(true),
  QUANTITY(true),
  COUNTED_ON(true),
  MINIMUM(true),
  LEAD_DAYS(true),
  PACK(false),
  ON_ORDER(false),
  USED_PER_MONTH(false);

  private final boolean required;

  Column(boolean required) {
    this.required = required;
  }

  boolean isRequired() {
    return required;
  }

  /** The name in the header line. */
  String title() {
    return name().toLowerCase(Locale.ROOT);
  }

  static Optional<Column> of(String title) {
    String name = title.strip().toLowerCase(Locale.ROOT);
    return Arrays.stream(values()).filter(c -> c.title().equals(name)).findFirst();
  }
}
