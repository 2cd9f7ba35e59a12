package org.thumbseal.simulate;

/** What a parameter has to satisfy; NaN never does. */
final class Demand {
  private Demand() {}

  static void that(boolean condition, String otherwise) {
    if (!condition) {
      throw new IllegalArgumentException(otherwise);
    }
  }

  static void fraction(double value, String name) {
    that(value >= 0 && value <= 1, name + " must be between 0 and 1, not " + value);
  }

  static void notNegative(double value, String name) {
    that(value >= 0, name + " must not be negative: " + value);
  }
}
