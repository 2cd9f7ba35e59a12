package org.thumbseal.measurement;

import java.util.Optional;

/**
 * The blocked jar left to itself: pump off, or its hose pinched.
 *
 * @param start when the vacuum began to be on its own, s
 * @param end when the inlet was opened, or the record ended, s
 * @param decayRate fall of the vacuum once the gas is warm, kPa/min
 * @param leakRate air that leaks in, mL/min of the pressure {@code reference}; a little below 0
 *     where noise makes it so; absent where the volume of the jar is not known
 * @param circumstances how the jar was left to itself
 * @param reference pressure of the air the leak is counted in
 * @param fitted the part that was used, where there was one
 * @param refusal why there is no rate, and what to do
 */
public record Decay(
    double start,
    double end,
    Optional<Budgeted> decayRate,
    Optional<Budgeted> leakRate,
    Circumstances circumstances,
    Reference reference,
    Optional<Fitted> fitted,
    Optional<String> refusal) {

  /**
   * How the jar was left to itself.
   *
   * @param pinched whether the pump was shut off from the jar; if not, its own leak is in the
   *     rates, which then are upper bounds of those of the jar
   * @param startSaid whether nothing shows the start, so that the last seconds were taken on the
   *     word of the person who pinched the hose
   */
  public record Circumstances(boolean pinched, boolean startSaid) {}

  /**
   * Pressure of the air around.
   *
   * @param kilopascals absolute, kPa
   * @param isAmbient whether that was the pressure of the day; else it is the standard atmosphere,
   *     and only that part of the curve was used which is choked in any weather at sea level
   */
  public record Reference(double kilopascals, boolean isAmbient) {}

  /**
   * The part of the decay that was used.
   *
   * @param from s
   * @param to s
   * @param chokedAbove vacuum above which the inflow is constant, kPa
   * @param rms misfit, kPa
   * @param lag1 autocorrelation of neighbouring residuals, -1 to 1
   */
  public record Fitted(double from, double to, double chokedAbove, double rms, double lag1) {}
}
