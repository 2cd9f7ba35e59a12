package org.thumbseal.accuracy;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.DoubleStream;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.thumbseal.accuracy.Measured.Finding;
import org.thumbseal.accuracy.Row.Outcome;
import org.thumbseal.grade.Verdict;
import org.thumbseal.quantity.Quantity;
import org.thumbseal.simulate.Fault;
import org.thumbseal.simulate.FaultKind;

/** The figures on trials made by hand. */
class FiguresTest {
  private static final double U_RISE = 0.2;
  private static final double U_MAXIMUM = 2;

  private static Truth truth(double rise, double maximum) {
    Map<String, Double> values = Map.of(Truth.OPEN, 0.2, Truth.RISE, rise, Truth.MAXIMUM, maximum);
    return new Truth(values, 2, 101.325, Fault.NONE);
  }

  private static Measured measured(double rise, double maximum, Verdict verdict) {
    Map<String, Quantity> quantities =
        Map.of(
            Truth.RISE, Quantity.seconds(rise, U_RISE / 2),
            Truth.MAXIMUM, Quantity.kilopascals(maximum, U_MAXIMUM / 2));
    return new Measured(quantities, verdict, List.of());
  }

  private static Trial trial(double error, Verdict verdict) {
    return new Trial(truth(8, 90), Optional.of(measured(8 + error, 90 + error, verdict)));
  }

  private static List<Trial> errors(double... errors) {
    return DoubleStream.of(errors).mapToObj(e -> trial(e, Verdict.PASS)).toList();
  }

  @Test
  void rankIsTheNearestThatAShareDoesNotExceed() {
    Ranked hundred = Ranked.of(IntStream.rangeClosed(1, 100).mapToDouble(i -> -i));

    assertThat(hundred.within(0.95)).isEqualTo(95);
    assertThat(hundred.within(0.5)).isEqualTo(50);
    assertThat(hundred.shareWithin(90)).isEqualTo(0.9);
  }

  /** At 8 s, 30 ms + 0.2 % is 46 ms. */
  @ParameterizedTest
  @CsvSource({"0.045, MET", "-0.045, MET", "0.047, NOT_MET"})
  void riseIsHeldAgainstItsBar(double error, Outcome outcome) {
    assertThat(ErrorFigures.rise(errors(0, error)).outcome()).isEqualTo(outcome);
  }

  @Test
  void whatWasNotMeasuredIsNotMet() {
    assertThat(ErrorFigures.rise(List.of()).outcome()).isEqualTo(Outcome.NOT_MEASURED);
    assertThat(ErrorFigures.speed("", errors(0)).outcome()).isEqualTo(Outcome.NOT_MEASURED);
  }

  /** One truth in twenty outside is 95 %; none outside is too much. */
  @Test
  void coverageMayBeTooSmallAndTooLarge() {
    double[] mostlyInside = new double[20];
    mostlyInside[7] = 1.1 * U_RISE;

    assertThat(rise(mostlyInside).outcome()).isEqualTo(Outcome.MET);
    assertThat(rise(0, 0.9 * U_RISE).outcome()).isEqualTo(Outcome.NOT_MET);
    assertThat(rise(0, 1.1 * U_RISE).outcome()).isEqualTo(Outcome.NOT_MET);
  }

  private static Row rise(double... errors) {
    return CoverageFigures.judged("here", errors(errors)).stream()
        .filter(r -> r.what().contains(Truth.RISE))
        .findFirst()
        .orElseThrow();
  }

  /** Limits of 10 s and 80 kPa; the nearer counts, in expanded uncertainties. */
  @ParameterizedTest
  @CsvSource({"9.6, 90, 2", "8, 83, 1.5", "10.4, 90, -2", "8, 77, -1.5", "10.4, 70, -5"})
  void marginIsThatOfTheWorseCriterion(double rise, double maximum, double margin) {
    assertThat(truth(rise, maximum).margin(measured(rise, maximum, Verdict.PASS)).orElseThrow())
        .isCloseTo(margin, within(1e-9));
  }

  /** 65 kPa that were missed by 2.2 kPa are missed by 1.1 expanded uncertainties of the vacuum. */
  @Test
  void aRiseThatIsNotReachedIsMissedByItsVacuum() {
    Truth low = new Truth(Map.of(Truth.OPEN, 0.2, Truth.MAXIMUM, 63.0), 2, 70, Fault.NONE);
    Truth same = new Truth(low.values(), 2, 101.325, Fault.NONE);
    Measured measured = measured(9, 63, Verdict.FAIL);

    assertThat(same.margin(measured).orElseThrow()).isCloseTo(-17 / U_MAXIMUM, within(1e-9));
    assertThat(low.margin(measured).orElseThrow()).isPositive();
  }

  @Test
  void verdictsAreHeldAgainstTheTruth() {
    List<Row> right = VerdictFigures.of("here", List.of(trial(0, Verdict.PASS)));
    List<Row> open = VerdictFigures.of("here", List.of(trial(0, Verdict.INCONCLUSIVE)));
    List<Row> opposite = VerdictFigures.of("here", List.of(trial(0, Verdict.FAIL)));
    Trial bad = new Trial(truth(8, 79.9), Optional.of(measured(8, 83, Verdict.PASS)));
    List<Row> falsePass = VerdictFigures.of("here", List.of(bad));
    List<Row> nothing =
        VerdictFigures.of("here", List.of(new Trial(truth(8, 90), Optional.empty())));

    assertThat(missed(right)).isEmpty();
    assertThat(missed(open)).containsExactly("verdict right, truth at least 2 U outside, here");
    assertThat(missed(opposite)).hasSize(2);
    assertThat(missed(falsePass)).containsExactly("false passes, here");
    assertThat(missed(nothing)).containsExactly("one test found, here");
  }

  private static List<String> missed(List<Row> rows) {
    return rows.stream().filter(r -> r.outcome() == Outcome.NOT_MET).map(Row::what).toList();
  }

  private static FoundPump found(FaultKind kind, double severity, String said) {
    return new FoundPump(new Fault(kind, severity), Optional.of(new Finding(said, 0.95)));
  }

  @Test
  void findingsMakeAMatrix() {
    FindingFigures figures =
        new FindingFigures(
            List.of(
                found(FaultKind.LEAK, 0.1, "restriction"),
                found(FaultKind.LEAK, 0.2, "leak"),
                found(FaultKind.LOST_SPEED, 0.2, "worn-pump"),
                new FoundPump(Fault.NONE, Optional.empty())));

    assertThat(figures.rows().get(0).measured()).isEqualTo("75.0 % of 4");
    assertThat(figures.rows().get(0).outcome()).isEqualTo(Outcome.NOT_MET);
    assertThat(figures.rows().get(4).measured()).isEqualTo("66.7 % of 3");
    assertThat(figures.matrix())
        .contains(
            "| | none | leak | restriction | worn-pump | control-not-at-maximum | reduced-volume |"
                + " blocked-inlet | no-vacuum | right | mild | gross |",
            "| leak | 0 | 1 | 1 | 0 | 0 | 0 | 0 | 0 | 50 % | 0 % | 100 % |",
            "| none | 1 | 0 | 0 | 0 | 0 | 0 | 0 | 0 | 100 % | 100 % | 0 % |");
  }

  /** A line that was sent whole, but late, is no damaged line that was taken. */
  @Test
  void damagedLinesAreNotTaken() {
    Row row = LineFigure.of(new Population(1, 3).measured(0).later(), 50_000);

    assertThat(row.measured()).matches("\\d of \\d{5}; by chance 0\\.[5-7]");
    assertThat(row.outcome()).isEqualTo(Outcome.MET);
  }
}
