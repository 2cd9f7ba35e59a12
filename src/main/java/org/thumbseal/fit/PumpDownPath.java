package org.thumbseal.fit;

/**
 * State and sensitivities of {@link PumpDown} on a grid of times, by the classical Runge-Kutta
 * method; between the grid points cubics by values and slopes (Hermite).
 */
final class PumpDownPath {
  private static final int STATES = 2;
  private static final int PRESSURE = 0;
  private static final int MASS = 1;
  private static final double GAMMA = 1.4;

  /** Of the times in which gas warms up and jar empties, so much a step: errors below 1 Pa. */
  private static final double STEP_SHARE = 0.1;

  private static final double LONGEST_STEP = 0.1;
  private static final int MOST_STEPS = 20_000;
  private static final Orifice NO_HOLE = new Orifice(0, 0);

  private final double[] parameters;
  private final int[] free;
  private final boolean leaks;
  private final double step;
  private final double[][] states;
  private final double[][] slopes;

  private PumpDownPath(double[] parameters, int[] free, double step, int steps) {
    this.parameters = parameters;
    this.free = free;
    this.leaks = free.length > PumpDown.LEAK && free[PumpDown.LEAK] == PumpDown.LEAK;
    this.step = step;
    this.states = new double[steps + 1][STATES * (1 + free.length)];
    this.slopes = new double[steps + 1][STATES * (1 + free.length)];
  }

  /**
   * Integrates from the blocking on.
   *
   * @param parameters all of them
   * @param free those whose derivatives are wanted
   */
  static PumpDownPath of(double[] parameters, int[] free, PumpDown.Rise rise) {
    double fastest =
        Math.min(parameters[PumpDown.EXCHANGE], 1 / (GAMMA * parameters[PumpDown.RATE]));
    double wanted = Math.min(LONGEST_STEP, STEP_SHARE * fastest);
    double step = Math.max(wanted, rise.longest() / MOST_STEPS);
    int steps = (int) Math.ceil(rise.longest() / step) + 1;
    PumpDownPath path = new PumpDownPath(parameters, free, step, steps);
    path.states[0][PRESSURE] = rise.start();
    path.states[0][MASS] = rise.start();
    path.integrate();
    return path;
  }

  /** Whether it is that of these values of the free parameters. */
  boolean isOf(double[] p) {
    for (int i = 0; i < free.length; i++) {
      if (Double.compare(parameters[free[i]], p[i]) != 0) {
        return false;
      }
    }
    return true;
  }

  /** Pressure as a share of ambient; before time 0 that of the start. */
  double pressure(double x) {
    return at(x, PRESSURE);
  }

  /** Derivative of the pressure by a free parameter, by its place. */
  double sensitivity(double x, int place) {
    return at(x, STATES * (1 + place) + PRESSURE);
  }

  private double at(double x, int component) {
    double place = Math.max(0, x) / step;
    int i = Math.min((int) place, states.length - 2);
    double s = place - i;
    double rest = 1 - s;
    double left = states[i][component];
    double right = states[i + 1][component];
    double bend =
        rest * (step * slopes[i][component] - (right - left))
            - s * (step * slopes[i + 1][component] - (right - left));
    return rest * left + s * right + s * rest * bend;
  }

  private void integrate() {
    int size = states[0].length;
    double[] k2 = new double[size];
    double[] k3 = new double[size];
    double[] k4 = new double[size];
    double[] between = new double[size];
    for (int n = 0; n + 1 < states.length; n++) {
      double[] y = states[n];
      double[] k1 = slopes[n];
      slope(y, k1);
      slope(moved(y, k1, step / 2, between), k2);
      slope(moved(y, k2, step / 2, between), k3);
      slope(moved(y, k3, step, between), k4);
      for (int i = 0; i < size; i++) {
        states[n + 1][i] = y[i] + step / 6 * (k1[i] + 2 * k2[i] + 2 * k3[i] + k4[i]);
      }
    }
    slope(states[states.length - 1], slopes[states.length - 1]);
  }

  private static double[] moved(double[] y, double[] slope, double by, double[] out) {
    for (int i = 0; i < y.length; i++) {
      out[i] = y[i] + by * slope[i];
    }
    return out;
  }

  /** Slopes of P and m, then, for each free parameter, of their derivatives by it (chain rule). */
  private void slope(double[] y, double[] slope) {
    double w = parameters[PumpDown.EXCHANGE];
    double leak = parameters[PumpDown.LEAK];
    PumpFlow pump = PumpFlow.at(y[PRESSURE], parameters);
    Orifice hole = leaks ? Orifice.at(y[PRESSURE]) : NO_HOLE;
    double temperature = y[PRESSURE] / y[MASS];
    double inflow = hole.flow();
    slope[PRESSURE] = GAMMA * (leak * inflow - pump.flow() * temperature) + (1 - temperature) / w;
    slope[MASS] = leak * inflow - pump.flow();
    double inflowByPressure = leak * hole.derivative();
    for (int i = 0; i < free.length; i++) {
      double dp = y[STATES * (1 + i) + PRESSURE];
      double dm = y[STATES * (1 + i) + MASS];
      double dt = (dp - temperature * dm) / y[MASS];
      double dLeak = inflowByPressure * dp + (free[i] == PumpDown.LEAK ? inflow : 0);
      double dPumped = pump.byPressure() * dp + pump.by(free[i]);
      double dHeat = -dt / w - (free[i] == PumpDown.EXCHANGE ? (1 - temperature) / (w * w) : 0);
      slope[STATES * (1 + i) + PRESSURE] =
          GAMMA * (dLeak - dPumped * temperature - pump.flow() * dt) + dHeat;
      slope[STATES * (1 + i) + MASS] = dLeak - dPumped;
    }
  }
}
