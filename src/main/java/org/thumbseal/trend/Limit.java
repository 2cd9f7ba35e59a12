package org.thumbseal.trend;

/**
 * A limit of a quantity.
 *
 * @param value in the unit of the readings, as it was applied
 * @param side on which side the pump has failed
 */
public record Limit(double value, Side side) {
  /** Where the bad values are. */
  public enum Side {
    /** A longer time is worse. */
    ABOVE(1),
    /** Less vacuum is worse. */
    BELOW(-1);

    private final int sign;

    Side(int sign) {
      this.sign = sign;
    }
  }

  /** Whether a value has failed. */
  public boolean beyond(double reading) {
    return badness(reading) > 0;
  }

  /** How far a reading is on the bad side, in its unit; negative on the good one. */
  double badness(double reading) {
    return side.sign * (reading - value);
  }

  /** How fast a slope makes it worse, per day. */
  double worsening(double slope) {
    return side.sign * slope;
  }

  /** The end of a line's interval that is worse. */
  double worst(TrendLine line, double day) {
    return side == Side.ABOVE ? line.highest(day) : line.lowest(day);
  }

  /** The worse end of the interval of its slope. */
  double worst(TrendLine.Slope slope) {
    return side == Side.ABOVE ? slope.high() : slope.low();
  }
}
