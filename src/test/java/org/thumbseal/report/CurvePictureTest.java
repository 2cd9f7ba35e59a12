package org.thumbseal.report;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.thumbseal.pipeline.CurvePoints.Point;
import org.thumbseal.record.Standing;
import org.thumbseal.report.Drawing.At;

/** Lines stand where the numbers of the document are, read off at the axes of the drawing. */
class CurvePictureTest {
  /** Coordinates have two decimal places on about 7 units a second and 3 a kilopascal. */
  private static final double SECONDS = 0.01;

  private static final double KILOPASCALS = 0.02;

  private static Drawing drawing(ReportFixture fixture) throws Exception {
    return new Drawing(CurvePicture.file(fixture.report()));
  }

  @ParameterizedTest
  @ValueSource(strings = {"sound", "leak", "slipped", "altitude", "no-vacuum"})
  void theCorridorStandsWhereTheLimitsAre(String name) throws Exception {
    ReportFixture fixture = ReportFixture.of(name);
    Drawing drawing = drawing(fixture);
    double open = fixture.number("/measurements/openVacuum/value");
    double level = open + fixture.number("/criteria/rise/value");
    double seconds = fixture.number("/criteria/riseTimeLimit/value");

    List<At> gate = drawing.line("rise-limit");
    assertThat(gate).hasSize(3);
    assertAt(gate.get(0), 0, level);
    assertAt(gate.get(1), seconds, level);
    assertAt(gate.get(2), seconds, 0);
    At maximum = drawing.line("maximum-limit").get(0);
    assertAt(maximum, 0, fixture.number("/criteria/maximumVacuumLimit/value"));
  }

  private static void assertAt(At at, double seconds, double kilopascals) {
    assertThat(at.seconds()).isCloseTo(seconds, within(SECONDS));
    assertThat(at.kilopascals()).isCloseTo(kilopascals, within(KILOPASCALS));
  }

  @Test
  void theCurveIsThatOfTheMeasurementAndMissesNoExtreme() throws Exception {
    ReportFixture fixture = ReportFixture.of("sound");
    List<At> drawn = drawing(fixture).line("curve");
    List<Point> measured = fixture.measured();

    for (At at : drawn) {
      Point nearest =
          measured.stream()
              .min((a, b) -> Double.compare(distance(a, at), distance(b, at)))
              .orElseThrow();
      assertAt(at, nearest.seconds(), nearest.kilopascals());
    }
    double highest = measured.stream().mapToDouble(Point::kilopascals).max().orElseThrow();
    assertThat(drawn.stream().mapToDouble(At::kilopascals).max().orElseThrow())
        .isCloseTo(highest, within(KILOPASCALS));
  }

  private static double distance(Point point, At at) {
    return Math.hypot(point.seconds() - at.seconds(), point.kilopascals() - at.kilopascals());
  }

  /** The misfit stated in the document is that of the line that is drawn. */
  @ParameterizedTest
  @ValueSource(strings = {"sound", "leak", "restriction", "worn-pump", "altitude"})
  void theModelIsTheOneThatWasFitted(String name) throws Exception {
    ReportFixture fixture = ReportFixture.of(name);
    List<PumpModel.At> model = PumpModel.of(fixture.view());
    double end = new TestShape(fixture.view()).pulledUntil() - 0.5;
    List<Point> rise =
        fixture.measured().stream().filter(p -> p.seconds() > 0 && p.seconds() < end).toList();
    double squares = 0;
    for (Point point : rise) {
      double off = point.kilopascals() - at(model, point.seconds());
      squares += off * off;
    }
    double misfit = fixture.number("/diagnostics/pumpModel/rmsMisfit/value");
    double noise = fixture.number("/diagnostics/noise/value");

    assertThat(model).isNotEmpty();
    assertThat(Math.sqrt(squares / rise.size())).isLessThan(1.5 * Math.hypot(misfit, noise));
  }

  private static double at(List<PumpModel.At> model, double seconds) {
    double step = model.get(1).seconds();
    int left = Math.min(model.size() - 2, (int) (seconds / step));
    double share = seconds / step - left;
    return model.get(left).kilopascals() * (1 - share) + model.get(left + 1).kilopascals() * share;
  }

  /** At the plateau the vacuum is as uncertain as the document says of the maximum. */
  @Test
  void theBandEndsAtTheUncertaintyOfTheMaximum() throws Exception {
    ReportFixture fixture = ReportFixture.of("sound");
    List<PumpModel.At> model = PumpModel.of(fixture.view());
    double stated = fixture.number("/measurements/maximumVacuum/expandedUncertainty");

    assertThat(model.get(model.size() - 1).expanded())
        .isBetween(stated * 0.99, Math.hypot(stated, 0.3));
    assertThat(model.get(0).expanded()).isLessThan(0.3);
  }

  @Test
  void aModelThatIsNoPictureOfTheRiseIsNotDrawn() throws Exception {
    assertThat(drawing(ReportFixture.of("slipped")).line("model")).isEmpty();
    assertThat(drawing(ReportFixture.of("sound")).line("model")).isNotEmpty();
  }

  @Test
  void whereSamplesAreMissingNothingIsDrawn() throws Exception {
    Report report = ReportFixture.of("gap").report();
    Trace.Gap gap = report.trace().gaps().get(0);

    assertThat(report.trace().pieces()).hasSize(2);
    assertThat(report.trace().points())
        .noneMatch(p -> p.seconds() > gap.from() + 1e-6 && p.seconds() < gap.to() - 1e-6);
    assertThat(CurvePicture.file(report)).contains("class=\"gap\"", "samples missing");
  }

  @Test
  void aVoidCurveSaysSoAcrossItself() throws Exception {
    Report report = ReportFixture.of("sound").report();
    Standing gone =
        new Standing(Optional.of("P"), Optional.empty(), Optional.of("hose of another pump"));

    assertThat(CurvePicture.file(report)).doesNotContain("class=\"stamp\"");
    assertThat(CurvePicture.file(report.standing(gone, List.of()))).contains("class=\"stamp\"");
  }
}
