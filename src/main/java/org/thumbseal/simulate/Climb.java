package org.thumbseal.simulate;

import java.util.OptionalDouble;
import org.thumbseal.quantity.StandardAtmosphere;

/** Follows the vacuum from the blocking of the inlet on a grid of 1 ms. */
final class Climb {
  static final double GRID_SECONDS = 1e-3;

  private static final int GRID_POINTS_OF_MEAN = 1_000;
  private static final double RISE_PASCALS = 65_000;
  private static final double UNADJUSTED_FROM_PASCALS = 98_000;
  private static final double PASCALS_IN_KPA = 1_000;

  private final Bench bench;
  private final Plant plant;
  private final double start;
  private final double open;
  private final double rise;
  private final double[] latest = new double[GRID_POINTS_OF_MEAN];

  private long points;
  private double sum;
  private double highestMean = Double.NEGATIVE_INFINITY;
  private double crossing = Double.NaN;
  private double before;
  private double end;

  Climb(Bench bench, double start, double openPascals) {
    this.bench = bench;
    this.plant = bench.plant();
    this.start = start;
    this.open = openPascals;
    double ambient = plant.weather().pascals();
    boolean adjusted = ambient < UNADJUSTED_FROM_PASCALS;
    this.rise =
        adjusted ? RISE_PASCALS * ambient / StandardAtmosphere.SEA_LEVEL_PASCALS : RISE_PASCALS;
    this.before = bench.vacuum();
  }

  void until(double seconds) {
    end = seconds;
    while (start + (points + 1) * GRID_SECONDS < seconds) {
      points++;
      bench.advance(start + points * GRID_SECONDS);
      note(bench.vacuum());
    }
  }

  TestTruth truth(boolean slipped) {
    boolean timed = !slipped && !Double.isNaN(crossing);
    boolean held = !slipped && points >= GRID_POINTS_OF_MEAN;
    return new TestTruth(
        start,
        end,
        open / PASCALS_IN_KPA,
        rise / PASCALS_IN_KPA,
        timed ? OptionalDouble.of(crossing - start) : OptionalDouble.empty(),
        held ? OptionalDouble.of(highestMean / PASCALS_IN_KPA) : OptionalDouble.empty(),
        plant);
  }

  private void note(double vacuum) {
    if (Double.isNaN(crossing) && vacuum >= open + rise) {
      double part = (open + rise - before) / (vacuum - before);
      crossing = start + (points - 1 + part) * GRID_SECONDS;
    }
    before = vacuum;
    int slot = (int) (points % GRID_POINTS_OF_MEAN);
    sum += vacuum - latest[slot];
    latest[slot] = vacuum;
    if (points >= GRID_POINTS_OF_MEAN) {
      highestMean = Math.max(highestMean, sum / GRID_POINTS_OF_MEAN);
    }
  }
}
