package org.thumbseal.seek;

import java.util.LinkedHashMap;
import java.util.Map;
import org.thumbseal.quantity.Quantity;

/**
 * A weighted sum of vacuums with its uncertainty.
 *
 * <p>The sum of a_i v_i has u2 = sum over sensors of (sum a_i g_i v_i)2 + sum a_i2 (s_i2 + r2): g
 * the error of the sensor's scale, common to all its readings (JCGM 100:2008 5.2.2, fully
 * correlated inputs), s what a test has alone, r how far one and the same pump differs from one
 * test to the next. Of a difference the scale leaves its share of the difference only: at +-2.5 %
 * of reading two plateaus near 80 kPa are each known to 2.3 kPa, their difference of 3 kPa to 0.4
 * kPa.
 */
final class Combination {
  private final Map<String, Double> bySensor = new LinkedHashMap<>();
  private double sum;
  private double own;

  /** A constant, kPa. */
  Combination(double constant) {
    this.sum = constant;
  }

  /** One vacuum less another. */
  static Quantity difference(Level of, Level from) {
    return new Combination(0).plus(1, of).plus(-1, from).quantity();
  }

  Combination plus(double weight, Level level) {
    double repeated = LeakRules.REPEATABILITY_KILOPASCALS;
    sum += weight * level.kilopascals();
    own += weight * weight * (level.own() * level.own() + repeated * repeated);
    double common = level.scale().relative() * level.kilopascals();
    bySensor.merge(level.scale().sensor(), weight * common, Double::sum);
    return this;
  }

  Quantity quantity() {
    double square = own;
    for (double scale : bySensor.values()) {
      square += scale * scale;
    }
    return Quantity.kilopascals(sum, Math.sqrt(square));
  }
}
