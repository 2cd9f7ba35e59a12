package org.thumbseal.seek;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static org.thumbseal.seek.Plateaus.at;
import static org.thumbseal.seek.Plateaus.decaying;
import static org.thumbseal.seek.Plateaus.pumping;
import static org.thumbseal.seek.Plateaus.search;

import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.thumbseal.quantity.Quantity;

/** What a stretch lets in, against worked values. */
class IntakeTest {
  private static Quantity leak(SearchState state) {
    return Intake.of(state).get(0).leak().orElseThrow();
  }

  /**
   * Holes in air of 20 degC, discharge coefficient 0.85, flow by the choked-flow formula (198.63
   * m/s times the effective area), and the vacuum they take from a pump of 30 L/min; computed from
   * the formulas q = S p and choked isentropic flow. The vacuum is given to 1 %.
   */
  @ParameterizedTest
  @CsvSource({"0.1, 0.080, 0.27", "0.3, 0.716, 2.42", "0.5, 1.99, 6.72", "0.8, 5.09, 17.2"})
  void aHoleInTheJarLetsInWhatTheTableOfHolesSays(double diameter, double flow, double loss) {
    SearchState state = search(pumping(at(1, 88 - loss), 30, 0.3), at(2, 88));
    assertThat(leak(state).value()).isCloseTo(1_000 * flow, within(0.015 * 1_000 * flow));
    double area = Math.PI * diameter * diameter / 4 * 1e-6;
    double choked = 198.63 * 0.85 * area * 60_000;
    assertThat(choked).isCloseTo(flow, within(0.005 * flow + 0.0006));
  }

  /** 0.1 L/min of ambient air is 0.16888 Pa m3/s; over 30 L/min it is 0.338 kPa, over 20 0.507. */
  @ParameterizedTest
  @CsvSource({"30, 0.338", "20, 0.507"})
  void throughputIsSpeedTimesPressure(double speed, double loss) {
    SearchState state = search(pumping(at(1, 88 - loss), speed, 0), at(2, 88));
    assertThat(leak(state).value()).isCloseTo(100, within(0.2));
    assertThat(100 * 1e-6 / 60 * 101_325).isCloseTo(0.16888, within(1e-5));
  }

  /**
   * u2 of a product of independent factors is the sum of the squares of their shares (JCGM 100:2008
   * 5.1.6); the difference has 0.15 kPa of repeatability and 0.02 kPa of reading twice.
   */
  @Test
  void theUncertaintyIsThatOfAProduct() {
    SearchState state = search(pumping(at(1, 78, 0), 30, 0.6), at(2, 88, 0));
    double ofLoss = Math.sqrt(2 * (0.15 * 0.15 + 0.02 * 0.02)) / 10;
    Quantity leak = leak(state);
    assertThat(leak.standardUncertainty() / leak.value())
        .isCloseTo(Math.hypot(ofLoss, 0.6 / 30), within(1e-9));
  }

  @Test
  void withoutASpeedOnlyTheVacuumIsTold() {
    List<SectionLeak> leaks = Intake.of(search(at(1, 78), at(2, 88)));
    assertThat(leaks).singleElement().matches(leak -> leak.leak().isEmpty());
    assertThat(leaks.get(0).span().lost().value()).isCloseTo(10, within(1e-12));
  }

  /** Back through the resting pump comes the same in both tests. */
  @Test
  void twoDecaysTellTheSectionAsWell() {
    SearchState state = search(decaying(at(0, 80), 900, 30), decaying(at(1, 82), 300, 40));
    assertThat(leak(state).value()).isCloseTo(600, within(1e-9));
    assertThat(leak(state).standardUncertainty()).isCloseTo(50, within(1e-9));
  }

  @Test
  void theTwoWaysAreWeighted() {
    SearchState pumped = search(pumping(at(0, 80), 30, 0.3), at(1, 82));
    SearchState both =
        search(decaying(pumping(at(0, 80), 30, 0.3), 900, 30), decaying(at(1, 82), 300, 40));
    assertThat(leak(both).value()).isBetween(leak(pumped).value() - 10, 600.0);
    assertThat(leak(both).standardUncertainty())
        .isLessThan(Math.min(50, leak(pumped).standardUncertainty()));
  }

  /** Choked below 0.528 of ambient: 47.8 kPa of vacuum at sea level. */
  @ParameterizedTest
  @CsvSource({"47.6, true", "48.0, false"})
  void whereTheLeakIsNotChokedItLetsInMoreAtAHigherVacuum(double vacuum, boolean atLeast) {
    assertThat(Intake.of(search(at(1, vacuum), at(2, 88))).get(0).atLeast()).isEqualTo(atLeast);
  }
}
