package org.thumbseal.calibration;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;

class StraightLineTest {
  /** Thermometer of JCGM 100:2008 (GUM) H.3, data from memory: readings and corrections. */
  private static final double[] T = {
    21.521, 22.012, 22.512, 23.003, 23.507, 23.999, 24.513, 25.002, 25.503, 26.010, 26.511
  };

  private static final double[] B = {
    -.171, -.169, -.166, -.159, -.164, -.165, -.156, -.157, -.159, -.161, -.160
  };

  private static StraightLine thermometer() {
    List<CalibrationPoint> points = new ArrayList<>();
    for (int i = 0; i < T.length; i++) {
      points.add(new CalibrationPoint(T[i], B[i]));
    }
    return StraightLine.through(points, 0);
  }

  /** GUM H.3.3: y1 = -0.1712 (0.0029) at t0 = 20, y2 = 0.00218 (0.00067), r = -0.930, s 0.0035. */
  @Test
  void givesTheLineOfGumH3WithItsCovariance() {
    StraightLine line = thermometer();

    assertThat(line.at(20)).isCloseTo(-0.1712, within(0.00005));
    assertThat(Math.sqrt(line.varianceAt(20))).isCloseTo(0.0029, within(0.00005));
    assertThat(line.slope()).isCloseTo(0.00218, within(0.000005));
    assertThat(Math.sqrt(line.slopeVariance())).isCloseTo(0.00067, within(0.000005));
    double r = line.covarianceAt(20) / Math.sqrt(line.varianceAt(20) * line.slopeVariance());
    assertThat(r).isCloseTo(-0.930, within(0.0005));
    assertThat(line.residual()).isCloseTo(0.0035, within(0.00005));
  }

  /** GUM H.3.4: b(30) = -0.1494, u = 0.0041. */
  @Test
  void predictsTheCorrectionOfGumH3At30Degrees() {
    StraightLine line = thermometer();

    assertThat(line.at(30)).isCloseTo(-0.1494, within(0.00005));
    assertThat(Math.sqrt(line.varianceAt(30))).isCloseTo(0.0041, within(0.00005));
  }

  /** Closed form for two points of standard deviation s, d apart: u(slope) = s sqrt(2) / d. */
  @Test
  void twoPointsHaveTheScatterThatIsStated() {
    StraightLine line = StraightLine.through(Cases.points("0.4=0", "80.4=82"), 0.06);

    assertThat(line.slope()).isCloseTo(1.025, within(1e-12));
    assertThat(line.at(0.4)).isCloseTo(0, within(1e-12));
    assertThat(line.residual()).isZero();
    assertThat(Math.sqrt(line.slopeVariance())).isCloseTo(0.06 * Math.sqrt(2) / 80, within(1e-12));
  }

  @Test
  void pointsThatLieOnALineByChanceAreNotTakenForExact() {
    StraightLine line = StraightLine.through(Cases.points("0=0", "40=40", "80=80"), 0.06);

    assertThat(line.residual()).isCloseTo(0, within(1e-9));
    assertThat(line.scatter()).isEqualTo(0.06);
  }
}
