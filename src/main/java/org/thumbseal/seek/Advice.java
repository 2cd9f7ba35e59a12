package org.thumbseal.seek;

import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import org.thumbseal.quantity.Quantity;
import org.thumbseal.seek.Conclusion.Verdict;

/**
 * Where to block next.
 *
 * <p>First at the jar inlet, where the monthly test is made. Too low there: inwards, the jar off
 * first, for its gasket and joints fail most. Enough there: outwards, the tube. A stretch that
 * leaks is divided until one section is left; it is the answer when it takes for certain more than
 * any other, and more than all that can still leak further in.
 */
final class Advice {
  private final SearchState state;
  private final SuctionPath path;
  private final double factor;

  Advice(SearchState state) {
    this.state = state;
    this.path = state.path();
    this.factor = state.factor();
  }

  Step next() {
    if (state.tests().isEmpty()) {
      return new Step.Block(path.jarInlet());
    }
    List<Span> leaking = leaking();
    Optional<Span> wide = leaking.stream().filter(span -> !span.isSingle()).findFirst();
    if (wide.isPresent()) {
      return new Step.Block(path.dividing(wide.get().from(), wide.get().to()));
    }
    return leaking.isEmpty() ? noneLeaks() : found(leaking);
  }

  /** Those that leak for certain, worst first. */
  private List<Span> leaking() {
    double least = LeakRules.least(state.ambient());
    return state.spans().stream()
        .filter(span -> isAbove(span.lost(), least))
        .sorted(Comparator.comparingDouble((Span span) -> -span.lost().value()))
        .toList();
  }

  private boolean isAbove(Quantity quantity, double limit) {
    return quantity.value() - factor * quantity.standardUncertainty() > limit;
  }

  private Step found(List<Span> leaking) {
    Span worst = leaking.get(0);
    if (!isInsideKnown() && !isAbove(beyondTheRest(worst), 0)) {
      return new Step.Block(path.dividing(innermost().station(), path.size()));
    }
    boolean alone = state.spans().stream().allMatch(s -> s.equals(worst) || isWorse(worst, s));
    Verdict verdict = alone ? Verdict.SECTION_LEAKS : Verdict.SEVERAL_LEAK;
    return new Step.Stop(new Conclusion(verdict, leaking));
  }

  private boolean isWorse(Span worst, Span other) {
    return isAbove(
        new Combination(0)
            .plus(1, level(worst.to()))
            .plus(-1, level(worst.from()))
            .plus(-1, level(other.to()))
            .plus(1, level(other.from()))
            .quantity(),
        0);
  }

  /**
   * What the worst takes, less all that can still get in between the innermost station and pump.
   */
  private Quantity beyondTheRest(Span worst) {
    double best = state.ambient() * (1 - LeakRules.LOWEST_SHARE);
    return new Combination(-best)
        .plus(1, level(worst.to()))
        .plus(-1, level(worst.from()))
        .plus(1, innermost().vacuum().level())
        .quantity();
  }

  private Level level(int station) {
    StationTest test = state.byStation().get(station);
    if (test == null) {
      throw new IllegalStateException("no test at station " + station);
    }
    return test.vacuum().level();
  }

  private Step noneLeaks() {
    StationTest outer = state.byStation().firstEntry().getValue();
    if (!outer.vacuum().isEnough()) {
      return isInsideKnown() ? stopLow() : inward();
    }
    if (outer.station() > 0) {
      return new Step.Block(0);
    }
    return isInsideKnown() ? stopLow() : new Step.Block(path.last());
  }

  private Step inward() {
    return new Step.Block(path.dividing(innermost().station(), path.size()));
  }

  private StationTest innermost() {
    return state.byStation().lastEntry().getValue();
  }

  /** Whether nothing is left to look at between the innermost station and the pump. */
  private boolean isInsideKnown() {
    int inner = innermost().station();
    return inner == path.last() || state.isTight(inner);
  }

  private Step stopLow() {
    StationTest.Vacuum inner = innermost().vacuum();
    if (inner.isSurelyTooLow()) {
      return new Step.Stop(Conclusion.none(Verdict.PUMP_WEAK));
    }
    boolean seen = state.notLookedAt().isEmpty();
    if (inner.isEnough() && !seen) {
      return new Step.Block(0);
    }
    return new Step.Stop(Conclusion.none(inner.isEnough() ? Verdict.TIGHT : Verdict.UNDECIDED));
  }
}
