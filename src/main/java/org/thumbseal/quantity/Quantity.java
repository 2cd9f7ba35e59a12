package org.thumbseal.quantity;

/**
 * A measured value with its unit and standard uncertainty.
 *
 * @param value the best estimate, in {@code unit}
 * @param unit UCUM code: {@code kPa}, {@code s}, {@code L/min}, {@code Pa}, {@code Cel}
 * @param standardUncertainty u in {@code unit}, zero or more
 */
public record Quantity(double value, String unit, double standardUncertainty) {
  /** Factor between standard and expanded uncertainty (about 95 % for a normal distribution). */
  public static final double COVERAGE_FACTOR = 2;

  /** Refuses values that are not numbers, so that none reaches a document. */
  public Quantity {
    if (!Double.isFinite(value)
        || !Double.isFinite(standardUncertainty)
        || standardUncertainty < 0) {
      throw new IllegalArgumentException("not a quantity: " + value + " +- " + standardUncertainty);
    }
  }

  /** A pressure or vacuum in kPa. */
  public static Quantity kilopascals(double value, double standardUncertainty) {
    return new Quantity(value, "kPa", standardUncertainty);
  }

  /** A time in seconds. */
  public static Quantity seconds(double value, double standardUncertainty) {
    return new Quantity(value, "s", standardUncertainty);
  }

  /** U = k u, in {@link #unit}. */
  public double expandedUncertainty() {
    return COVERAGE_FACTOR * standardUncertainty;
  }
}
