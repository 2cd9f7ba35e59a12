package org.thumbseal.fit;

import java.util.Arrays;
import org.jspecify.annotations.Nullable;

/**
 * Vacuum in a jar that a pump limited by its dead volume empties, while the gas cools as it expands
 * and the wall warms it again; air may leak in, and a laminar restriction may stand in the way.
 *
 * <p>Balance of mass and energy of one well-mixed volume of air, with P the pressure as a share of
 * ambient, m the mass as a share of that at ambient, h = P/m the temperature as a share of the
 * wall's, w the time of heat exchange with the wall, q the choked leak as a share of the jar's
 * first content per second, f its dependence on P ({@link Orifice}), d what the pump draws ({@link
 * PumpFlow}) and g = 1.4:
 *
 * <pre>
 *   dm/dt = q f - d
 *   dP/dt = g (q f - d h) + (1 - h)/w
 * </pre>
 *
 * <p>The gas is warm again when it reaches the pump. Without cooling (w to 0), leak and restriction
 * it is the exponential of {@link ExponentialRise} with tau = 1/k. The derivatives by the
 * parameters are integrated along with the state.
 */
public final class PumpDown implements CurveModel {
  /** Index of k = S0/V, 1/s. */
  public static final int RATE = 0;

  /** Index of the ultimate pressure as a share of ambient. */
  public static final int ULTIMATE = 1;

  /** Index of the time of heat exchange with the wall, s. */
  public static final int EXCHANGE = 2;

  /** Index of the choked leak as a share of the jar's first content, 1/s. */
  public static final int LEAK = 3;

  /**
   * Index of the resistance of the restriction, s: pressure as a share of ambient over the share of
   * the jar's content that flows per second, at ambient.
   */
  public static final int RESISTANCE = 4;

  /** Rates beyond, 1/s, are no pump at a jar. */
  private static final double FASTEST = 20;

  /** Beyond, s, a rise is adiabatic. */
  private static final double LONGEST_EXCHANGE = 1e3;

  /** Below, s, it is isothermal. */
  private static final double SHORTEST_EXCHANGE = 0.05;

  private final Rise rise;
  private final double[] held;
  private final int[] free;
  private @Nullable PumpDownPath path;

  private PumpDown(Rise rise, double exchange, int... free) {
    this.rise = rise;
    this.held = new double[] {0, 0, exchange, 0, 0};
    this.free = free;
  }

  /**
   * What is known of a rise.
   *
   * @param ambient barometric pressure, kPa
   * @param open vacuum when the inlet was blocked, at time 0, kPa
   * @param longest last time that will be asked for, s
   */
  public record Rise(double ambient, double open, double longest) {
    /** Pressure at the blocking as a share of ambient. */
    double start() {
      return 1 - open / ambient;
    }
  }

  /** Rate and ultimate pressure alone, at a given time of heat exchange, s: a first guess. */
  public static PumpDown exchanging(Rise rise, double seconds) {
    return new PumpDown(rise, seconds, RATE, ULTIMATE);
  }

  /** A tight jar with nothing in the way; not for several threads at once. */
  public static PumpDown tight(Rise rise) {
    return new PumpDown(rise, 0, RATE, ULTIMATE, EXCHANGE);
  }

  /** The same with a leak as its fourth parameter. */
  public static PumpDown leaking(Rise rise) {
    return new PumpDown(rise, 0, RATE, ULTIMATE, EXCHANGE, LEAK);
  }

  /** The same with the resistance of a restriction as its fourth parameter. */
  public static PumpDown restricted(Rise rise) {
    return new PumpDown(rise, 0, RATE, ULTIMATE, EXCHANGE, RESISTANCE);
  }

  @Override
  public int parameterCount() {
    return free.length;
  }

  @Override
  public double value(double[] p, double x) {
    @Nullable PumpDownPath current = along(p);
    return current == null ? Double.NaN : rise.ambient() * (1 - current.pressure(x));
  }

  @Override
  public void gradient(double[] p, double x, double[] out) {
    @Nullable PumpDownPath current = along(p);
    if (current == null) {
      Arrays.fill(out, Double.NaN);
      return;
    }
    for (int i = 0; i < free.length; i++) {
      out[i] = -rise.ambient() * current.sensitivity(x, i);
    }
  }

  private double[] all(double[] p) {
    double[] all = held.clone();
    for (int i = 0; i < free.length; i++) {
      all[free[i]] = p[i];
    }
    return all;
  }

  private static boolean isPhysical(double[] all) {
    return all[RATE] > 0
        && all[RATE] < FASTEST
        && all[ULTIMATE] > -0.2
        && all[ULTIMATE] < 1
        && all[EXCHANGE] > SHORTEST_EXCHANGE
        && all[EXCHANGE] < LONGEST_EXCHANGE
        && all[RESISTANCE] > -0.1 / all[RATE];
  }

  /** One integration serves all points of a set of parameters; none where it is not physical. */
  private @Nullable PumpDownPath along(double[] p) {
    @Nullable PumpDownPath current = path;
    if (current == null || !current.isOf(p)) {
      double[] all = all(p);
      current = isPhysical(all) ? PumpDownPath.of(all, free, rise) : null;
      path = current;
    }
    return current;
  }
}
