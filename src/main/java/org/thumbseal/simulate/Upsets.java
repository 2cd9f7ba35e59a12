package org.thumbseal.simulate;

/**
 * What disturbs readings besides white noise.
 *
 * @param spikeFraction part of the readings that are spikes, 0 to 1
 * @param spikePascals largest height of a spike, either way, Pa
 * @param driftPascals amplitude of a slow swing of the zero, Pa
 * @param driftSeconds period of that swing, s, above 0
 */
public record Upsets(
    double spikeFraction, double spikePascals, double driftPascals, double driftSeconds) {
  /** Nothing of the kind. */
  public static final Upsets NONE = new Upsets(0, 0, 0, 1);

  /** Refuses values out of range. */
  public Upsets {
    Demand.fraction(spikeFraction, "part of spikes");
    Demand.that(driftSeconds > 0, "period of the drift must be above 0 s");
  }

  double at(double seconds, Draw chance) {
    double drift = driftPascals * StrictMath.sin(2 * Math.PI * seconds / driftSeconds);
    return chance.chance(spikeFraction)
        ? drift + chance.between(-spikePascals, spikePascals)
        : drift;
  }
}
