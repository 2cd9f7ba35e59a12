package org.thumbseal.report;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.thumbseal.capture.Capture;
import org.thumbseal.capture.CaptureReader;
import org.thumbseal.pipeline.CurvePoints;
import org.thumbseal.pipeline.CurvePoints.Point;
import org.thumbseal.pipeline.Grader;
import org.thumbseal.pipeline.GradingSettings;
import org.thumbseal.record.ResultDocument;
import org.thumbseal.seal.Sha256;

/** The drawing of a golden capture: a rise of 65 kPa in 7.5 s, on to 88.9 kPa. */
class TextCurveTest {
  private static final int AXIS = 6;

  private final Capture capture;
  private final ResultDocument result;

  TextCurveTest() throws Exception {
    byte[] bytes = Files.readAllBytes(Path.of("fixtures", "captures", "sound.log"));
    capture = CaptureReader.read(bytes);
    result =
        Grader.grade(
                capture,
                Grader.Source.capture("sound.log", Sha256.hex(bytes)),
                GradingSettings.DEFAULT)
            .get(0);
  }

  private List<String> lines() {
    return TextCurve.lines(result, CurvePoints.of(capture, result.measurement().orElseThrow()));
  }

  @Test
  void pointsCountFromTheBlockingAndFromTheZero() {
    List<Point> points = CurvePoints.of(capture, result.measurement().orElseThrow());
    Point quiet = points.get(0);
    double rise = result.measurement().orElseThrow().riseTime().orElseThrow().value();
    Point risen = points.stream().filter(p -> p.seconds() >= rise).findFirst().orElseThrow();

    assertThat(points)
        .hasSize((int) capture.lines().stream().filter(TextCurveTest::isSample).count());
    assertThat(quiet.seconds()).isBetween(-13.0, -8.0);
    assertThat(quiet.kilopascals()).isBetween(-0.3, 0.3);
    assertThat(risen.kilopascals() - result.measurement().orElseThrow().openVacuum().value())
        .isBetween(64.5, 66.0);
  }

  private static boolean isSample(org.thumbseal.capture.CaptureLine line) {
    return line.text().startsWith("S,");
  }

  @Test
  void theDrawingFitsATerminalAndSaysItsLimits() {
    List<String> lines = lines();

    assertThat(lines).hasSize(18).allMatch(line -> line.length() <= 100);
    assertThat(String.join("\n", lines))
        .contains("-- +65.0 kPa within 10 s")
        .contains("== at least 80.0 kPa")
        .contains("s since the inlet was blocked");
  }

  /** The curve must run as the pump did: never steeper back, at the top in the end. */
  @Test
  void theCurveRisesToItsMaximumAndStaysThere() {
    List<String> rows = lines().subList(0, 16);
    int before = 16;
    int reached = 0;
    for (int column = AXIS + 3; column < AXIS + 40; column++) {
      int top = topmost(rows, column);
      if (top >= 0) {
        assertThat(top).isLessThanOrEqualTo(before);
        before = top;
        reached++;
      }
    }
    assertThat(reached).isGreaterThan(30);
    assertThat(before).isLessThanOrEqualTo(row(88.9) + 1);
  }

  /** Row of a vacuum: 16 rows from the top of the axis, which the first row names, to 0. */
  private int row(double kilopascals) {
    double top = Double.parseDouble(lines().get(0).substring(0, 4).strip());
    return (int) Math.round(15 * (1 - kilopascals / top));
  }

  private static int topmost(List<String> rows, int column) {
    for (int row = 0; row < rows.size(); row++) {
      if (column < rows.get(row).length() && rows.get(row).charAt(column) == '*') {
        return row;
      }
    }
    return -1;
  }

  /** A sound curve is above the corridor's corner when its time is up. */
  @Test
  void theCorridorEndsAtItsLimits() {
    List<String> rows = lines().subList(0, 16);
    double open = result.measurement().orElseThrow().openVacuum().value();
    String limit = rows.get(row(open + 65));

    assertThat(limit).contains("-----");
    assertThat(rows.get(15)).contains("|");
    assertThat(rows.get(row(80))).contains("=====");
  }
}
