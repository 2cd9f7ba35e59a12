package org.thumbseal.report;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.thumbseal.pipeline.CurvePoints.Point;

/** Samples as a table: RFC 4180, and the very numbers of the curve. */
class SamplesCsvTest {
  /** Zero and clock in the document are rounded to 1e-4 kPa and 1e-6. */
  private static final double KILOPASCALS = 2e-4;

  private static final double SECONDS = 2e-4;

  @ParameterizedTest
  @ValueSource(strings = {"sound", "gap", "noisy-line", "wraps", "restart"})
  void theTableHoldsEverySampleAndNoOther(String name) throws Exception {
    ReportFixture fixture = ReportFixture.of(name);
    StringBuilder text = new StringBuilder();
    fixture.read(new SamplesCsv(new TestShape(fixture.view()), text));
    List<Point> measured = fixture.measured();

    assertThat(text.toString().replace("\r\n", "")).doesNotContain("\r", "\n");
    List<String> rows = List.of(text.toString().split("\r\n", -1));
    assertThat(rows.get(0)).isEqualTo("time_since_blocking_s,vacuum_kPa,phase");
    assertThat(rows).hasSize(measured.size() + 2).last().isEqualTo("");
    for (int i = 0; i < measured.size(); i++) {
      String[] fields = rows.get(i + 1).split(",", -1);
      assertThat(fields).hasSize(3);
      assertThat(Double.parseDouble(fields[0]))
          .isCloseTo(measured.get(i).seconds(), within(SECONDS));
      assertThat(Double.parseDouble(fields[1]))
          .isCloseTo(measured.get(i).kilopascals(), within(KILOPASCALS));
      assertThat(fields[2]).isIn("", "idle", "open", "rise", "hold", "release", "decay");
    }
  }
}
