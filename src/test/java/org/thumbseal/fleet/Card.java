package org.thumbseal.fleet;

import java.time.LocalDate;

/**
 * What the register says of a pump.
 *
 * @param id of the pump
 * @param ward where it stands
 * @param litres volume of its jar, L
 * @param ratedLitresPerMinute what its papers promise
 * @param inService first day of use
 */
public record Card(
    String id, Ward ward, double litres, long ratedLitresPerMinute, LocalDate inService) {
  /** As the stock names it. */
  String gasket() {
    return litres > 1 ? "Gasket 2 L jar" : "Gasket 1 L jar";
  }

  /** What it is, for people. */
  String description() {
    return litres > 1 ? "suction pump on a trolley" : "suction pump, small";
  }
}
