package org.thumbseal.capture;

import java.util.OptionalDouble;
import org.thumbseal.quantity.PressureUnit;
import org.thumbseal.wire.PressureSense;

/**
 * Pressures as a column has them.
 *
 * @param unit their unit
 * @param sense their zero and direction
 * @param style how its numbers are written
 */
record PressureCells(PressureUnit unit, PressureSense sense, NumberStyle style) {
  /** Pa as a sensor would send it; empty where the cell is no finite number. */
  OptionalDouble pascals(String cell) {
    return style.read(cell).stream()
        .map(value -> sense.signed(unit.toPascals(value)))
        .filter(Double::isFinite)
        .findFirst();
  }
}
