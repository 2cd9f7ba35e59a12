package org.thumbseal.seek;

import java.util.List;
import java.util.Optional;
import org.thumbseal.quantity.Quantity;

/**
 * From the vacuum that a stretch takes to the air it lets in.
 *
 * <p>S0 (p_outer - p_inner) is the throughput that the outer test has more; over ambient pressure
 * it is a volume of ambient air a minute. Where both tests have a decay, the difference of what
 * leaked in while the pump did not draw is a second estimate: a pump that leaks back does so in
 * both, and cancels. The two are weighted by their uncertainty; the volume of the jar is in both,
 * so what it leaves open is added to the mean and not made smaller by it.
 */
public final class Intake {
  private static final double MILLILITRES = 1_000;
  private static final String UNIT = "mL/min";

  /** Marks of a jar: +-3 %, rectangular, as where its volume enters a speed. */
  private static final double VOLUME = 0.03 / Math.sqrt(3);

  /** Below this share of ambient pressure a leak is choked: (2/2.4)^3.5, air. */
  private static final double CRITICAL_RATIO = StrictMath.pow(2 / 2.4, 3.5);

  private final SearchState state;

  private Intake(SearchState state) {
    this.state = state;
  }

  /** What each stretch between two tested stations lets in, from the patient end. */
  public static List<SectionLeak> of(SearchState state) {
    Intake intake = new Intake(state);
    return state.spans().stream().map(intake::of).toList();
  }

  private SectionLeak of(Span span) {
    StationTest outer = test(span.from());
    double pressure = outer.air().ambient() - outer.vacuum().level().kilopascals();
    boolean choked = pressure <= CRITICAL_RATIO * outer.air().ambient();
    Optional<Quantity> pumped = state.speed().map(speed -> pumped(span.lost(), speed));
    return new SectionLeak(span, together(pumped, leaked(outer, test(span.to()))), !choked);
  }

  private Quantity pumped(Quantity lost, Quantity speed) {
    double factor = MILLILITRES / state.ambient();
    double own = speed.value() * lost.standardUncertainty();
    double pump = lost.value() * speed.standardUncertainty();
    return new Quantity(
        factor * speed.value() * lost.value(), UNIT, factor * StrictMath.hypot(own, pump));
  }

  private static Optional<Quantity> leaked(StationTest outer, StationTest inner) {
    return outer
        .air()
        .decay()
        .flatMap(from -> inner.air().decay().flatMap(to -> difference(from, to)));
  }

  private static Optional<Quantity> difference(StationTest.Decay from, StationTest.Decay to) {
    if (from.upperBound() != to.upperBound()) {
      return Optional.empty();
    }
    double error =
        StrictMath.hypot(from.leak().standardUncertainty(), to.leak().standardUncertainty());
    return Optional.of(new Quantity(from.leak().value() - to.leak().value(), UNIT, error));
  }

  private static Optional<Quantity> together(Optional<Quantity> one, Optional<Quantity> other) {
    if (one.isEmpty() || other.isEmpty()) {
      return one.or(() -> other);
    }
    return Optional.of(mean(one.get(), other.get()));
  }

  private static Quantity mean(Quantity one, Quantity other) {
    double first = 1 / square(one.standardUncertainty());
    double second = 1 / square(other.standardUncertainty());
    double value = (first * one.value() + second * other.value()) / (first + second);
    double error = Math.sqrt(1 / (first + second) + square(VOLUME * value));
    return new Quantity(value, UNIT, error);
  }

  private static double square(double value) {
    return value * value;
  }

  private StationTest test(int station) {
    return state.tests().stream()
        .filter(test -> test.station() == station)
        .reduce((earlier, later) -> later)
        .orElseThrow();
  }
}
