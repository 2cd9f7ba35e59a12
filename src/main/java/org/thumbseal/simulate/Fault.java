package org.thumbseal.simulate;

/**
 * What was done to a sound plant.
 *
 * @param kind what is wrong
 * @param severity how badly, 0 to 1, in the measure of the kind
 */
public record Fault(FaultKind kind, double severity) {
  /** Nothing is wrong. */
  public static final Fault NONE = new Fault(FaultKind.NONE, 0);

  /** Refuses a severity outside 0 to 1. */
  public Fault {
    Demand.fraction(severity, "severity");
  }

  /**
   * A plant with this fault.
   *
   * @param sound without one
   * @param speedLost speed lost with worn valves, as a multiple of the vacuum lost
   */
  Plant in(Plant sound, double speedLost) {
    Plant plant =
        switch (kind) {
          case NONE -> sound;
          case LEAK -> leaking(sound);
          case RESTRICTION -> restricted(sound);
          case WORN_VALVES -> worn(sound, speedLost);
          case LOST_SPEED -> sound.with(sound.pump().slowed(severity));
          case CONTROL_NOT_AT_MAXIMUM -> controlled(sound);
          case REDUCED_VOLUME -> sound.with(sound.jar().leftEmpty(1 - severity));
          case BLOCKED_INLET -> opened(sound);
          case NO_VACUUM -> powerless(sound);
        };
    return plant.with(this);
  }

  private Plant leaking(Plant sound) {
    double flow = severity * sound.pump().litresPerMinute();
    double whole = sound.circuit().leakArea() + sound.areaOfLeak(flow);
    return sound.with(sound.circuit().leaking(whole));
  }

  /** Half way: filter and pump pass the same with so much less before the pump. */
  private Plant restricted(Plant sound) {
    double ambient = sound.weather().pascals();
    double range = ambient * (1 - sound.pump().ultimateFraction());
    double passed = (1 - severity) * range;
    double behind = ambient - severity * range;
    double conductance = 2 * sound.pump().speed() * passed / (ambient * ambient - behind * behind);
    return sound.with(sound.circuit().filtered(conductance));
  }

  private Plant worn(Plant sound, double speedLost) {
    Pump slow = sound.pump().slowed(Math.min(0.9, speedLost * severity));
    double ultimate = slow.ultimateFraction() + severity * (1 - slow.ultimateFraction());
    return sound.with(slow.downTo(ultimate));
  }

  private Plant controlled(Plant sound) {
    return sound.with(sound.circuit().relievedAt((1 - severity) * sound.reachable()));
  }

  private Plant opened(Plant sound) {
    double area = sound.areaBalancedAt(severity * sound.reachable());
    return sound.with(sound.circuit().inlet(area));
  }

  private Plant powerless(Plant sound) {
    double area = sound.areaBalancedAt((1 - severity) * sound.reachable());
    return sound.with(sound.circuit().leaking(area));
  }
}
