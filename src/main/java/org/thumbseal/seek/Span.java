package org.thumbseal.seek;

import org.thumbseal.quantity.Quantity;

/**
 * What lies between two tested stations.
 *
 * @param from the outer station
 * @param to the inner station
 * @param lost vacuum that it takes: that of the inner station less that of the outer, kPa
 */
public record Span(int from, int to, Quantity lost) {
  /** Whether it is one section. */
  public boolean isSingle() {
    return to == from + 1;
  }
}
