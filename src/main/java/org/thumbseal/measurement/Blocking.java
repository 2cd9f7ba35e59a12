package org.thumbseal.measurement;

import java.util.Optional;
import org.thumbseal.fit.LinearLeastSquares;
import org.thumbseal.measurement.Contribution.Distribution;
import org.thumbseal.measurement.Contribution.Input;

/**
 * The instant the inlet was blocked, by least squares on the first part of the rise.
 *
 * <p>Departure from the baseline alone is always late, by more the more noise there is; so a curve
 * is laid through the first part of the rise and followed back to the open level.
 *
 * @param seconds device time, s
 * @param standardUncertainty s
 * @param source how it was found
 */
record Blocking(double seconds, double standardUncertainty, Source source) {
  /** How an instant of blocking was found. */
  enum Source {
    /** The knee of a fit. */
    FIT(Distribution.NORMAL, "fit of the first part of the rise"),
    /** No curve could be laid through. */
    BETWEEN_SAMPLES(Distribution.RECTANGULAR, "between the samples around it");

    private final Distribution distribution;
    private final String words;

    Source(Distribution distribution, String words) {
      this.distribution = distribution;
      this.words = words;
    }
  }

  private static final double FIRST_SHARE = 0.04;
  private static final double LAST_SHARE = 0.15;
  private static final double LEAD = 0.3;
  private static final double SHORTEST_SEARCH = 1;
  private static final int FEWEST = 6;
  private static final double LINE = 1;

  /** An open level that grows more slowly is steady, kPa/s. */
  private static final double STEADY = 0.3;

  /** The rise as it is seen from the open level. */
  record Rise(Curve curve, double open, double amplitude, double noise) {

    /**
     * A part with the open level taken off. A pump whose inlet is partly blocked already may still
     * be climbing: then it is the line it climbs along.
     */
    Curve levelled(Curve part, double earliest) {
      Curve before = curve.between(earliest - LINE, earliest);
      if (before.size() < FEWEST) {
        return part.minus(open);
      }
      double middle = earliest - LINE / 2;
      return LinearLeastSquares.robustPolynomial(before.points(), 1, middle)
          .result()
          .filter(f -> f.parameter(1) > STEADY + 4 * f.standardError(1))
          .map(f -> part.minusLine(f.parameter(0), f.parameter(1), middle))
          .orElseGet(() -> part.minus(open));
    }

    /** Index of the first sample from which on the rise stays above a share of its height. */
    int above(double share) {
      double limit = open + Math.max(share, Math.min(4 * noise / amplitude, 0.1)) * amplitude;
      for (int i = 0; i + 1 < curve.size(); i++) {
        if (curve.level(i) > limit && curve.level(i + 1) > limit) {
          return i;
        }
      }
      return curve.size() - 1;
    }
  }

  static Blocking of(Rise rise) {
    int first = rise.above(FIRST_SHARE);
    int end = Math.min(rise.curve().size(), Math.max(rise.above(LAST_SHARE), first + FEWEST));
    return fitted(rise, first, end).orElseGet(() -> between(rise, first));
  }

  /** Its line in the budget of a time that changes by so much for a change of the instant. */
  Contribution contribution(double sensitivity) {
    Input instant = Input.shaped(seconds, standardUncertainty, source.distribution);
    return new Contribution("onset", instant, sensitivity, source.words);
  }

  private static Optional<Blocking> fitted(Rise rise, int first, int end) {
    double seen = rise.curve().time(first);
    double until = rise.curve().time(end - 1) + 1e-9;
    if (end - first < FEWEST) {
      return Optional.empty();
    }
    double earliest = seen - Math.max(SHORTEST_SEARCH, 2 * (until - seen));
    Curve part = rise.curve().between(earliest - LEAD, until);
    return Knee.of(rise.levelled(part, earliest), earliest, seen)
        .map(k -> new Blocking(k.seconds(), k.standardUncertainty(), Source.FIT));
  }

  private static Blocking between(Rise rise, int first) {
    double after = rise.curve().time(first);
    double before = first > 0 ? rise.curve().time(first - 1) : after;
    double apart = Math.max(after - before, 1e-3);
    return new Blocking(after - apart / 2, apart / Math.sqrt(12), Source.BETWEEN_SAMPLES);
  }
}
