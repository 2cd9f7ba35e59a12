package org.thumbseal.measurement;

import java.util.Comparator;
import java.util.Optional;
import org.thumbseal.measurement.Contribution.Input;
import org.thumbseal.measurement.Quality.Zero;
import org.thumbseal.measurement.Steps.Level;
import org.thumbseal.wire.WireRecord.Reference;

/** What the sensor reads with the pump off, from the best there is in the record. */
final class ZeroFinder {
  /** A zero further off than this share of the span is a sensor out of order (common practice). */
  private static final double LARGEST_SHARE = 0.02;

  private static final double USUAL_SPAN = 100;

  /** Half width of what an open pump shows, kPa: a step that could have been missed. */
  private static final double UNSEEN_OPEN_VACUUM = 0.6;

  /** The level after a test still settles a little, kPa. */
  private static final double QUIET_END = 0.05;

  /** The two halves of a level at rest differ by less, kPa. */
  private static final double FLAT = 0.1;

  private static final double LEAST_QUIET = 0.4;
  private static final double SETTLED_AFTER_END = 1.0;

  private final Recorded recorded;
  private final Setup setup;
  private final Rest rest;

  ZeroFinder(Recorded recorded, Setup setup, Rest rest) {
    this.recorded = recorded;
    this.setup = setup;
    this.rest = rest;
  }

  Zero find() {
    Optional<Zero> quiet = rest.zeroPart(recorded.curve()).map(this::fromQuietStart);
    return quiet.or(this::fromQuietEnd).or(this::fromOpenLevel).orElseGet(this::unknown);
  }

  private Zero fromQuietStart(Curve quiet) {
    double error = quiet.deviation() / Math.sqrt(quiet.size());
    return zero(Input.normal(quiet.mean(), error, "kPa"), "quiet start");
  }

  /** A pump that ran from the first sample on may have been switched off before the last. */
  private Optional<Zero> fromQuietEnd() {
    return quietEnd()
        .filter(l -> rest.open().length() >= LEAST_QUIET && l.mean() < rest.openMean())
        .map(l -> zero(Input.normal(l.mean(), QUIET_END, "kPa"), "quiet end"));
  }

  /** No step was seen, so the pump was off all along, or on all along: a small error either way. */
  private Optional<Zero> fromOpenLevel() {
    boolean small =
        setup.reference() == Reference.ABSOLUTE
            ? setup.ambient().isEmpty()
            : Math.abs(rest.openMean()) <= LARGEST_SHARE * span();
    return rest.open().length() >= LEAST_QUIET && small
        ? Optional.of(
            zero(
                Input.rectangular(rest.openMean(), UNSEEN_OPEN_VACUUM, "kPa"),
                "level before the blocking; no pump start was seen"))
        : Optional.empty();
  }

  private Zero unknown() {
    double width = LARGEST_SHARE * span();
    if (setup.reference() == Reference.GAUGE) {
      return zero(
          Input.rectangular(0, width, "kPa"),
          "as the sensor has it, +-2 % of span; no quiet start");
    }
    return setup
        .ambient()
        .map(a -> zero(air(a, width), "ambient"))
        .orElseGet(
            () ->
                zero(
                    Input.rectangular(rest.openMean(), width, "kPa"),
                    "first level; no quiet start"));
  }

  private static Input air(AmbientPressure ambient, double width) {
    double error = Math.hypot(ambient.standardUncertainty(), width / Math.sqrt(3));
    return Input.normal(-ambient.kilopascals(), error, "kPa");
  }

  /** A gauge sensor in order reads about nothing at rest, and an open pump makes no pressure. */
  private Zero zero(Input vacuum, String source) {
    double kilopascals = vacuum.estimate();
    double largest = LARGEST_SHARE * span();
    boolean plausible =
        setup.reference() == Reference.ABSOLUTE
            ? isAir(-kilopascals, largest)
            : Math.abs(kilopascals) <= largest && rest.openMean() >= -largest;
    return new Zero(vacuum, source, drift(kilopascals), plausible);
  }

  /** An absolute sensor in order reads the air at rest. */
  private boolean isAir(double kilopascals, double largestError) {
    return setup
        .ambient()
        .map(
            a ->
                Math.abs(a.kilopascals() - kilopascals)
                    <= largestError + 2 * a.standardUncertainty())
        .orElse(AmbientPressure.isPlausible(kilopascals));
  }

  private double span() {
    return setup.range().map(Setup.Range::span).orElse(USUAL_SPAN);
  }

  /** The zero after the test, against the one before it. */
  private Optional<Double> drift(double zero) {
    return rest.idle().flatMap(before -> quietEnd()).map(l -> l.mean() - zero);
  }

  /** The lowest steady level after the test, where the pump was seen to be switched off. */
  private Optional<Level> quietEnd() {
    double from = recorded.window().endSeconds() + SETTLED_AFTER_END;
    Curve after = recorded.curve().between(from, recorded.curve().lastTime() + 1e-9);
    return Steps.of(after).stream()
        .skip(1)
        .filter(l -> l.length() >= 1 && isFlat(after.between(l.from(), l.to())))
        .min(Comparator.comparingDouble(Level::mean));
  }

  /** Air that still comes in through a narrow inlet is no zero. */
  private static boolean isFlat(Curve level) {
    double middle = (level.firstTime() + level.lastTime()) / 2;
    double before = level.between(level.firstTime(), middle).mean();
    double after = level.between(middle, level.lastTime() + 1e-9).mean();
    return Math.abs(after - before) < FLAT;
  }
}
