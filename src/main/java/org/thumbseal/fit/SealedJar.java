package org.thumbseal.fit;

/**
 * Vacuum in a shut jar into which air leaks at a constant rate, while the gas takes the temperature
 * of the wall.
 *
 * <p>With G the pressure the gas would have at the temperature of the wall (its amount) and P the
 * one it has, mass and energy balance of an ideal gas read
 *
 * <pre>
 * G' = g          P' = gamma g + K (1 - P/G)
 * </pre>
 *
 * where K = (gamma - 1) times heat conductance times wall temperature over volume: P goes after G
 * with the time constant G/K. Their solution is P = a G + (P0 - a G0) exp(-K L), with a = (gamma g
 * + K)/(g + K) and L = ln(G/G0)/g. The inflow is constant as long as the leak is choked.
 *
 * @param ambient pressure around the jar, in the unit of y
 * @param exchange K, in the unit of y over that of x; positive
 */
public record SealedJar(double ambient, double exchange) implements CurveModel {
  /** Index of the vacuum at x = 0, in the unit of y. */
  public static final int LEVEL = 0;

  /** Index of the amount of gas at x = 0, as its pressure at the temperature of the wall. */
  public static final int GAS = 1;

  /** Index of the rate g at which gas flows in, in the unit of y over that of x. */
  public static final int RATE = 2;

  private static final double GAMMA = 1.4;

  /** Below this share of gas taken up, a series stands for the logarithm. */
  private static final double LITTLE = 1e-4;

  @Override
  public int parameterCount() {
    return 3;
  }

  @Override
  public double value(double[] p, double x) {
    double gas = p[GAS] + p[RATE] * x;
    if (!(p[GAS] > 0 && gas > 0 && p[RATE] + exchange > 0)) {
      return Double.NaN;
    }
    double share = share(p[RATE]);
    return ambient - share * gas - (ambient - p[LEVEL] - share * p[GAS]) * left(p, x);
  }

  @Override
  public void gradient(double[] p, double x, double[] out) {
    double gas = p[GAS] + p[RATE] * x;
    double share = share(p[RATE]);
    double sum = p[RATE] + exchange;
    double shareByRate = (GAMMA - 1) * exchange / (sum * sum);
    double left = left(p, x);
    double cooled = (ambient - p[LEVEL] - share * p[GAS]) * left * exchange;
    out[LEVEL] = left;
    out[GAS] = share * (left - 1) - cooled * x / (p[GAS] * gas);
    out[RATE] = shareByRate * (p[GAS] * left - gas) - share * x + cooled * lengthByRate(p, x);
  }

  /** P over G when it has come to rest: gas that flows in brings its work along. */
  private double share(double rate) {
    return (GAMMA * rate + exchange) / (rate + exchange);
  }

  /** What is left of the first difference of temperature. */
  private double left(double[] p, double x) {
    return StrictMath.exp(-exchange * length(p, x));
  }

  private static double length(double[] p, double x) {
    double u = p[RATE] * x / p[GAS];
    return Math.abs(u) < LITTLE
        ? x / p[GAS] * (1 - u / 2 + u * u / 3)
        : StrictMath.log1p(u) / p[RATE];
  }

  private static double lengthByRate(double[] p, double x) {
    double u = p[RATE] * x / p[GAS];
    double scale = x / p[GAS];
    return Math.abs(u) < LITTLE
        ? scale * scale * (-0.5 + 2 * u / 3)
        : (x / (p[GAS] + p[RATE] * x) - StrictMath.log1p(u) / p[RATE]) / p[RATE];
  }
}
