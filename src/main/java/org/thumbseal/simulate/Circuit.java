package org.thumbseal.simulate;

/**
 * What stands around jar and pump. Areas are effective ones: discharge coefficient times area.
 *
 * @param inletArea the open inlet, m2
 * @param leakArea a hole from ambient into the jar, m2; 0 for none
 * @param filterConductance of the laminar restriction between jar and pump: throughput is this
 *     times (p1 squared - p2 squared)/2, in m3/(s Pa); infinity for none
 * @param reliefVacuum vacuum at which the control lets air in, Pa; infinity when it never does
 * @param warming how far hose and valves bring the gas to wall temperature before the pump takes it
 *     in: 0 it comes as cold as it is in the jar, 1 as warm as the wall
 */
public record Circuit(
    double inletArea,
    double leakArea,
    double filterConductance,
    double reliefVacuum,
    double warming) {
  /**
   * Gas in a hose a few millimetres wide has the temperature of its wall within some centimetres
   * (laminar entry length at Prandtl number 0.7; from memory).
   */
  private static final double WALL = 1;

  /** Refuses values out of range. */
  public Circuit {
    Demand.notNegative(inletArea, "inlet area");
    Demand.notNegative(leakArea, "leak area");
    Demand.that(filterConductance > 0, "filter conductance must be above 0");
    Demand.that(reliefVacuum > 0, "relief vacuum must be above 0");
    Demand.fraction(warming, "warming between jar and pump");
  }

  /**
   * A tight circuit without filter, its control at maximum, from which the pump draws gas of wall
   * temperature.
   *
   * @param inletArea the open inlet, m2
   */
  public static Circuit tight(double inletArea) {
    return new Circuit(inletArea, 0, Double.POSITIVE_INFINITY, Double.POSITIVE_INFINITY, WALL);
  }

  /** The same circuit with another inlet area, m2. */
  public Circuit inlet(double area) {
    return new Circuit(area, leakArea, filterConductance, reliefVacuum, warming);
  }

  /** The same circuit with a leak of this effective area, m2. */
  public Circuit leaking(double area) {
    return new Circuit(inletArea, area, filterConductance, reliefVacuum, warming);
  }

  /** The same circuit with a filter of this conductance, m3/(s Pa). */
  public Circuit filtered(double conductance) {
    return new Circuit(inletArea, leakArea, conductance, reliefVacuum, warming);
  }

  /** The same circuit with the control set to a vacuum, Pa. */
  public Circuit relievedAt(double vacuum) {
    return new Circuit(inletArea, leakArea, filterConductance, vacuum, warming);
  }

  /** The same circuit that warms the gas on its way to the pump by another share. */
  public Circuit warmed(double share) {
    return new Circuit(inletArea, leakArea, filterConductance, reliefVacuum, share);
  }
}
