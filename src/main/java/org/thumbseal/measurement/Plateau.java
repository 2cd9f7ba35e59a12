package org.thumbseal.measurement;

import org.thumbseal.fit.FitResult;
import org.thumbseal.fit.LinearLeastSquares;

/**
 * The highest 1 s mean of the vacuum while the inlet is blocked.
 *
 * <p>The highest of many noisy means is too high. So all places whose mean cannot be told from the
 * highest are taken together: a straight line through them gives the mean that stands there without
 * the noise.
 *
 * @param kilopascals on the sensor's own zero, kPa
 * @param standardUncertainty of noise alone, kPa
 * @param from begin of the stretch used, s
 * @param to its end, s
 */
record Plateau(double kilopascals, double standardUncertainty, double from, double to) {
  private static final double SPAN = 1;
  private static final double INDISTINGUISHABLE = 3;
  private static final double SIGNIFICANT_SLOPE = 2;
  private static final int FEWEST = 5;
  private static final int MOST = 4_000;

  /** Whether a blocked stretch is long enough for a 1 s mean. */
  static boolean isIn(Curve blocked) {
    return blocked.size() >= FEWEST && blocked.lastTime() - blocked.firstTime() >= 0.9 * SPAN;
  }

  static Plateau of(Curve blocked, double noise) {
    double[] means = means(blocked);
    int best = highest(means);
    int inOne = Math.max(1, blocked.indexAt(blocked.time(best) + SPAN) - best);
    double least = means[best] - INDISTINGUISHABLE * noise / Math.sqrt(inOne);
    int first = best;
    while (first > 0 && means[first - 1] >= least) {
      first--;
    }
    int last = best;
    while (last + 1 < means.length && means[last + 1] >= least) {
      last++;
    }
    return line(blocked.between(blocked.time(first), blocked.time(last) + SPAN));
  }

  /** Mean of the second after each sample; not a number where the record ends before. */
  private static double[] means(Curve curve) {
    double[] sums = new double[curve.size() + 1];
    for (int i = 0; i < curve.size(); i++) {
      sums[i + 1] = sums[i] + curve.level(i);
    }
    double latest = curve.lastTime() - SPAN + 1.5 * curve.period();
    int count = Math.max(1, curve.indexAt(latest));
    double[] means = new double[count];
    for (int i = 0, end = 0; i < count; i++) {
      while (end < curve.size() && curve.time(end) < curve.time(i) + SPAN) {
        end++;
      }
      means[i] = (sums[end] - sums[i]) / (end - i);
    }
    return means;
  }

  private static int highest(double[] means) {
    int best = 0;
    for (int i = 1; i < means.length; i++) {
      best = means[i] > means[best] ? i : best;
    }
    return best;
  }

  private static Plateau line(Curve part) {
    Curve thin = part.thinned(MOST);
    double middle = (part.firstTime() + part.lastTime()) / 2;
    double reach = Math.max(0, (part.lastTime() - part.firstTime() - SPAN) / 2);
    double flatError = thin.deviation() / Math.sqrt(thin.size());
    return LinearLeastSquares.polynomial(thin.points(), 1, middle)
        .result()
        .filter(f -> Math.abs(f.parameter(1)) > SIGNIFICANT_SLOPE * f.standardError(1))
        .map(f -> sloping(f, part, reach))
        .orElseGet(() -> new Plateau(part.mean(), flatError, part.firstTime(), part.lastTime()));
  }

  private static Plateau sloping(FitResult line, Curve part, double reach) {
    double level = line.parameter(0) + Math.abs(line.parameter(1)) * reach;
    double error = Math.hypot(line.standardError(0), line.standardError(1) * reach);
    return new Plateau(level, error, part.firstTime(), part.lastTime());
  }
}
