package org.thumbseal.capture;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.thumbseal.sample.StreamEvent.Sample;
import org.thumbseal.wire.WireRecord.Reference;

/**
 * Tables of other people, unchanged (fixtures/measured); what is expected stands in the files
 * themselves and in the notes on their columns beside them.
 */
class MeasuredTablesTest {

  /** Host-stamped, so its steps of 25 ms vary from 1 to 114 ms; never backwards. */
  @Test
  void readsTheSuctionCup() throws Exception {
    Table table = read("velasale_1a1e851_trial4.csv", "time=Time:s,pressure=data:hPa:absolute");
    assertClean(table, 416);
    assertThat(table.reference()).isEqualTo(Reference.ABSOLUTE);
    assertThat(table.started()).contains(Instant.parse("2023-01-28T01:28:03.630588Z"));
    assertThat(first(table).pascals()).isCloseTo(101_704.04663, within(1e-5));
    assertThat(table.samples().get(1).seconds())
        .isCloseTo(1674869283.659528 - 1674869283.6305876, within(1e-6));
    assertThat(table.samples().get(27).pascals()).isCloseTo(97_001.35498, within(1e-5));
  }

  @Test
  void readsTheInflation() throws Exception {
    Table table = read("softbot_sweep_kp_30.csv", "time=Time:s,pressure=Pressure:kPa");
    assertClean(table, 199);
    assertThat(table.samples().subList(3, 5))
        .containsExactly(new Sample(0.06, 0.06, 2_430), new Sample(0.081, 0.081, 5_610));
    assertThat(table.reference()).isEqualTo(Reference.GAUGE);
    assertThat(table.started()).isEmpty();
  }

  /** Points group thousands in the times and are decimal in the pressures of the same rows. */
  @Test
  void readsTheAirChamber() throws Exception {
    Table table = read("evazillen_Ultimaker_020.csv", "time=1:us,pressure=3:bar");
    assertClean(table, 1_443);
    assertThat(table.samples().get(1).seconds()).isEqualTo(0.1);
    assertThat(table.samples().get(1).pascals()).isCloseTo(767_500, within(1e-6));
    assertThat(last(table).seconds()).isEqualTo(144.465);
    assertThat(table.samples().get(501).seconds()).isEqualTo(50.172);
    assertThat(table.samples().get(501).pascals()).isCloseTo(6_800, within(1e-6));
  }

  @ParameterizedTest
  @CsvSource({
    "qc1_cp146, 1718.97, 313",
    "qc2_cp97, -1225.04, 283",
    "qc3_cp179_outlier42, 119.256, 366",
    "qc4_cp341, 12200.9, 500",
    "qc5_none, -991.944, 325"
  })
  void readsSeriesWithoutAClock(String column, double pascals, int rows) throws Exception {
    Table table = read("tcpd_quality_control_1to5.csv", "time=index:s,pressure=" + column + ":kPa");
    assertThat(first(table).pascals()).isCloseTo(pascals, within(0.05));
    assertThat(table.samples().size() + table.unreadable()).isEqualTo(500);
    assertThat(table.samples()).hasSize(rows);
    assertThat(last(table).seconds()).isEqualTo(rows - 1);
  }

  private static void assertClean(Table table, int rows) {
    assertThat(table.samples()).hasSize(rows);
    assertThat(table.unreadable()).isZero();
    assertThat(table.implausible()).isZero();
    assertThat(first(table).seconds()).isZero();
  }

  private static Sample first(Table table) {
    return table.samples().get(0);
  }

  private static Sample last(Table table) {
    return table.samples().get(table.samples().size() - 1);
  }

  private static Table read(String name, String columns)
      throws IOException, CaptureFormatException {
    byte[] bytes = Files.readAllBytes(Path.of("fixtures/measured", name));
    return TableReader.read(bytes, Columns.parse(columns));
  }
}
