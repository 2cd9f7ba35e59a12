package org.thumbseal.measurement;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.Optional;
import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.thumbseal.fit.PumpDown;
import org.thumbseal.measurement.PumpCurve.Shape;
import org.thumbseal.measurement.PumpEstimate.Distrust;

class PumpEstimateTest {
  private static final double AMBIENT = 101.325;
  private static final double OPEN = 0.3;
  private static final double NOISE = 0.05;

  /** A pump of 24 L/min at a jar of 2 L, 10 kPa ultimate pressure, 1.2 s to warm the gas. */
  private static final double[] PUMP = {0.2, 0.1, 1.2};

  @Test
  void findsThePumpingSpeed() {
    PumpEstimate pump = estimate(rise(Shape.TIGHT, 30, PUMP)).orElseThrow();
    Budgeted speed = pump.perLitre().orElseThrow().pumpingSpeed();
    assertThat(pump.distrust()).isEmpty();
    assertThat(speed.value()).isCloseTo(24, within(0.05));
    assertThat(speed.unit()).isEqualTo("L/min");
    assertThat(pump.perLitre().orElseThrow().freeAirFlow().value()).isCloseTo(21.6, within(0.05));
    assertThat(pump.ultimate().value()).isCloseTo(10.13, within(0.05));
    assertThat(pump.leak()).isEmpty();
  }

  /** +-3 % of volume and +-2 % of the model, rectangular: 1.73 % and 1.15 % of 24 L/min. */
  @Test
  void volumeAndModelStandInTheBudget() {
    Budgeted speed =
        estimate(rise(Shape.TIGHT, 30, PUMP)).orElseThrow().perLitre().orElseThrow().pumpingSpeed();
    assertThat(contribution(speed, "volume")).isCloseTo(0.4157, within(0.002));
    assertThat(contribution(speed, "model")).isCloseTo(0.2771, within(0.002));
    assertThat(contribution(speed, "fit")).isBetween(0.001, 0.05);
  }

  @Test
  void tellsALeakFromAWeakPump() {
    double[] leaking = {0.2, 0.1, 1.2, 0.02};
    PumpEstimate pump = estimate(rise(Shape.LEAKING, 40, leaking)).orElseThrow();
    assertThat(pump.perLitre().orElseThrow().pumpingSpeed().value()).isCloseTo(24, within(0.2));
    assertThat(pump.perLitre().orElseThrow().leak().orElseThrow().value())
        .isCloseTo(2.4, within(0.2));
    double[] weak = {0.2, 0.2, 1.2};
    PumpEstimate other = estimate(rise(Shape.TIGHT, 40, weak)).orElseThrow();
    assertThat(other.leak()).isEmpty();
    assertThat(other.ultimate().value()).isCloseTo(20.27, within(0.05));
  }

  @Test
  void aRestrictionIsSeenAndNoSpeedIsToldBehindIt() {
    double[] restricted = {0.3, 0.08, 1.2, 3};
    PumpEstimate pump = estimate(rise(Shape.RESTRICTED, 40, restricted)).orElseThrow();
    assertThat(pump.resistance().orElseThrow().value()).isCloseTo(0.9, within(0.05));
    assertThat(pump.distrust()).contains(Distrust.RESTRICTED);
  }

  @ParameterizedTest
  @ValueSource(doubles = {1, 3, 6})
  void aRecordTooShortIsRefused(double seconds) {
    assertThat(estimate(rise(Shape.TIGHT, seconds, PUMP)).orElseThrow().distrust())
        .contains(Distrust.TOO_SHORT);
  }

  @Test
  void aCurveOfAnotherKindIsRefused() {
    Curve curve = rise(Shape.TIGHT, 30, PUMP);
    double[] times = new double[curve.size()];
    double[] levels = new double[curve.size()];
    for (int i = 0; i < times.length; i++) {
      times[i] = curve.time(i);
      levels[i] = curve.level(i) - (times[i] > 4 && times[i] < 9 ? 4 : 0);
    }
    assertThat(estimate(Curve.of(times, levels)).orElseThrow().distrust())
        .contains(Distrust.MISFIT);
  }

  /** The pump could go on to 91 kPa, but the control lets air in at 72 kPa. */
  @Test
  void aControlThatHoldsIsACeiling() {
    Curve curve = rise(Shape.TIGHT, 30, PUMP);
    double[] levels = new double[curve.size()];
    double[] times = new double[curve.size()];
    for (int i = 0; i < times.length; i++) {
      times[i] = curve.time(i);
      levels[i] = Math.min(curve.level(i), 72);
    }
    PumpEstimate pump = estimate(Curve.of(times, levels)).orElseThrow();
    assertThat(pump.ceiling()).hasValueSatisfying(v -> assertThat(v).isCloseTo(72, within(0.01)));
    assertThat(pump.rate().value()).isCloseTo(0.2, within(0.004));
    assertThat(pump.distrust()).isEmpty();
  }

  @Test
  void withoutTheVolumeThereIsNoSpeed() {
    PumpEstimating.Known known = new PumpEstimating.Known(0.01, 0, 0.01, 0.1, Optional.empty());
    PumpCurve rise = new PumpCurve(rise(Shape.TIGHT, 30, PUMP), OPEN, AMBIENT);
    PumpEstimate pump = PumpEstimating.of(rise, Optional.empty(), known).orElseThrow();
    assertThat(pump.perLitre()).isEmpty();
    assertThat(pump.rate().value()).isCloseTo(0.2, within(0.002));
  }

  private static double contribution(Budgeted value, String name) {
    return value.budget().stream()
        .filter(c -> c.name().equals(name))
        .mapToDouble(Contribution::standardUncertainty)
        .sum();
  }

  private static Optional<PumpEstimate> estimate(Curve curve) {
    Optional<Plateau> plateau =
        Plateau.isIn(curve) ? Optional.of(Plateau.of(curve, NOISE)) : Optional.empty();
    return PumpEstimating.of(
        new PumpCurve(curve, OPEN, AMBIENT),
        plateau,
        new PumpEstimating.Known(0.001, 1e-5, 0.005, 0.1, Optional.of(2.0)));
  }

  private static Curve rise(Shape shape, double seconds, double[] parameters) {
    SplittableRandom random = new SplittableRandom(11);
    PumpDown model = shape.model(new PumpDown.Rise(AMBIENT, OPEN, seconds));
    double[] times = new double[(int) (seconds * 50)];
    double[] levels = new double[times.length];
    for (int i = 0; i < times.length; i++) {
      times[i] = (i + 1) / 50.0;
      levels[i] = model.value(parameters, times[i]) + NOISE * random.nextGaussian();
    }
    return Curve.of(times, levels);
  }
}
