package org.thumbseal.cli;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.time.Instant;
import java.util.Map;
import org.jspecify.annotations.Nullable;
import org.thumbseal.capture.CaptureHeader;
import org.thumbseal.simulate.Scenario;
import org.thumbseal.simulate.SimulationKind;

/** Head of a simulated capture: says that it is one, and what a technician would have noted. */
record SimulatedHeader(SimulationKind kind, Scenario scenario, @Nullable String asset) {
  /** Fixed, so that the same seed gives the same file. */
  private static final Instant STARTED = Instant.parse("2026-03-02T07:15:00Z");

  /** The header of a recording that began at a time, or at the fixed one. */
  CaptureHeader at(@Nullable Instant started) {
    CaptureHeader header =
        new CaptureHeader(started == null ? STARTED : started, Map.of())
            .with("source", "sim:" + kind.code())
            .with("note", "simulated, seed " + scenario.seed() + ": no pump was tested")
            .with("sensor", scenario.sensor().identity().sensorId())
            .with("jar-l", plain(scenario.plant().jar().nominalLitres()));
    header = kind == SimulationKind.PINCHED_HOSE ? header.with("pinched", "true") : header;
    return asset == null ? header : header.with("asset", asset);
  }

  private static String plain(double value) {
    BigDecimal rounded = BigDecimal.valueOf(value).setScale(3, RoundingMode.HALF_UP);
    return rounded.stripTrailingZeros().toPlainString();
  }
}
