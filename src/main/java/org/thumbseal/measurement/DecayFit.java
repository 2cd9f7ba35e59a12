package org.thumbseal.measurement;

import java.util.List;
import java.util.Optional;
import java.util.stream.IntStream;
import org.thumbseal.fit.FitResult;
import org.thumbseal.fit.LeastSquares;
import org.thumbseal.fit.SealedJar;

/**
 * The rate of a leak from the fall of the vacuum in a shut jar, the re-heating of the gas told from
 * it.
 *
 * <p>How fast the gas takes the temperature of the wall is not known beforehand. So the jar is
 * fitted with each of a range of time constants, and the rates are averaged with the weight the
 * curve gives to each; what they differ by is the uncertainty that the re-heating leaves.
 *
 * @param rate at which the vacuum falls once the gas is warm, kPa/s
 * @param fitError standard uncertainty of the scatter, neighbouring residuals taken into account
 * @param warmingError standard uncertainty that re-heating leaves, kPa/s
 * @param best the fit of the likeliest heat transfer
 */
record DecayFit(double rate, double fitError, double warmingError, FitResult best) {
  /**
   * Heat transfer from wall to gas, W/(m2 K): still air has 5 to 20 (common practice); thin air
   * that hardly moves less, stirred air more.
   */
  private static final double LEAST_TRANSFER = 2;

  private static final double MOST_TRANSFER = 30;
  private static final int TRANSFERS = 9;

  /** Wall of a vessel of 1 m3: a cube has 6 m2, a slim cylinder about the same. */
  private static final double WALL = 6;

  private static final double USUAL_LITRES = 1.5;
  private static final double ROOM_KELVIN = 293;
  private static final double GAMMA = 1.4;
  private static final int POINTS = 400;
  private static final int FEWEST = 10;
  private static final double LARGEST_LAG1 = 0.98;

  /** Less gas than this is no jar that a pump of this kind leaves, kPa. */
  private static final double LEAST_GAS = 2;

  /**
   * A jar.
   *
   * @param ambient pressure around it, kPa
   * @param litres its volume, L, where it is known
   */
  record Around(double ambient, Optional<Double> litres) {
    /** (gamma - 1) times conductance times temperature over volume, kPa/s. */
    private double exchange(double transfer) {
      double metres = StrictMath.cbrt(litres.orElse(USUAL_LITRES) / 1_000);
      return (GAMMA - 1) * transfer * WALL / metres * ROOM_KELVIN / 1_000;
    }
  }

  /** Fits a decay, its times counted from its begin; empty where it has too few points. */
  static Optional<DecayFit> of(Curve decay, Around around) {
    Curve part = decay.thinned(POINTS);
    return part.size() < FEWEST ? Optional.empty() : averaged(fits(part, around));
  }

  private static List<FitResult> fits(Curve part, Around around) {
    double gas = Math.max(LEAST_GAS, around.ambient() - part.level(0));
    double rate = (part.level(0) - part.level(part.size() - 1)) / (part.lastTime() + 1e-9);
    double[] start = {part.level(0), gas, Math.max(-0.2 * gas / part.lastTime(), rate)};
    return IntStream.range(0, TRANSFERS)
        .mapToDouble(DecayFit::transfer)
        .mapToObj(h -> new SealedJar(around.ambient(), around.exchange(h)))
        .map(jar -> LeastSquares.fit(jar, part.points(), start).result())
        .flatMap(Optional::stream)
        .toList();
  }

  private static double transfer(int index) {
    double share = index / (TRANSFERS - 1.0);
    return LEAST_TRANSFER * StrictMath.pow(MOST_TRANSFER / LEAST_TRANSFER, share);
  }

  private static Optional<DecayFit> averaged(List<FitResult> fits) {
    return fits.stream()
        .min((a, b) -> Double.compare(a.residualSumOfSquares(), b.residualSumOfSquares()))
        .map(best -> averaged(fits, best));
  }

  private static DecayFit averaged(List<FitResult> fits, FitResult best) {
    double widening = widening(best);
    double unit = Math.max(1e-18, best.residualSumOfSquares() / best.degreesOfFreedom() * widening);
    double sum = 0;
    double first = 0;
    double second = 0;
    double within = 0;
    for (FitResult fit : fits) {
      double worse = (fit.residualSumOfSquares() - best.residualSumOfSquares()) / unit;
      double weight = StrictMath.exp(-worse / 2);
      double rate = fit.parameter(SealedJar.RATE);
      double apart = rate - best.parameter(SealedJar.RATE);
      sum += weight;
      first += weight * apart;
      second += weight * apart * apart;
      within += weight * widening * fit.covariance(SealedJar.RATE, SealedJar.RATE);
    }
    double mean = first / sum;
    double between = Math.max(0, second / sum - mean * mean);
    return new DecayFit(
        best.parameter(SealedJar.RATE) + mean, Math.sqrt(within / sum), Math.sqrt(between), best);
  }

  /** Residuals that go with their neighbours count for fewer than they are. */
  private static double widening(FitResult fit) {
    double lag1 = Math.min(LARGEST_LAG1, Math.max(0, fit.lag1Autocorrelation()));
    return (1 + lag1) / (1 - lag1);
  }
}
