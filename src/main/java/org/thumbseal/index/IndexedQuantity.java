package org.thumbseal.index;

import java.util.Optional;

/**
 * A measured value of a test, under its name in the document.
 *
 * @param value in its unit
 * @param unit UCUM code
 * @param expanded expanded uncertainty in the same unit, not negative
 * @param coverage its coverage factor
 * @param bound {@code upper} where the true value may be anything below
 */
public record IndexedQuantity(
    double value,
    String unit,
    Optional<Double> expanded,
    Optional<Double> coverage,
    Optional<String> bound) {}
