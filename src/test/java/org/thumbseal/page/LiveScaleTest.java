package org.thumbseal.page;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.time.Instant;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.thumbseal.measurement.AmbientPressure;
import org.thumbseal.measurement.AmbientPressure.Origin;
import org.thumbseal.phase.Phase;
import org.thumbseal.pipeline.GradingSettings;
import org.thumbseal.sample.StreamEvent.Sample;
import org.thumbseal.wire.WireRecord.Identity;
import org.thumbseal.wire.WireRecord.Reference;

class LiveScaleTest {
  private final LiveScale scale = new LiveScale();

  private static Sample sample(double seconds, double pascals) {
    return new Sample(seconds, seconds, pascals);
  }

  private void rest(double pascals) {
    scale.entered(null, Phase.IDLE);
    for (int i = 0; i < 60; i++) {
      scale.accept(sample(i * 0.05, pascals), Phase.IDLE);
    }
  }

  private void know(Reference reference, Optional<Double> ambient) {
    var sensor = new Identity("S-1", "1", reference, -100_000, 0, 20);
    var air = ambient.map(p -> new AmbientPressure(p, 0.2, Origin.GIVEN));
    scale.know(new LiveFacts(Optional.of(sensor), air), GradingSettings.DEFAULT, Instant.EPOCH);
  }

  @Test
  void aGaugeSensorIsReadFromItsLevelAtRest() {
    know(Reference.GAUGE, Optional.empty());
    rest(-300);

    assertThat(scale.isZeroKnown()).isTrue();
    assertThat(scale.vacuum(sample(4, -80_300))).isCloseTo(80, within(1e-9));
  }

  @Test
  void anAbsoluteSensorIsReadFromTheAirItReadsAtRest() {
    know(Reference.ABSOLUTE, Optional.empty());
    rest(95_000);

    assertThat(scale.isZeroKnown()).isTrue();
    assertThat(scale.vacuum(sample(4, 20_000))).isCloseTo(75, within(1e-9));
  }

  /** A clogged filter holds the vacuum up with the inlet open: that level is no zero. */
  @Test
  void aLevelThatNoSensorInOrderReadsAtRestIsNoZero() {
    know(Reference.GAUGE, Optional.empty());
    rest(-12_000);

    assertThat(scale.isZeroKnown()).isFalse();
    assertThat(scale.vacuum(sample(4, -12_000))).isCloseTo(12, within(1e-9));
  }

  @Test
  void withoutALevelAtRestAnAbsoluteSensorIsReadFromTheAmbientPressure() {
    know(Reference.ABSOLUTE, Optional.of(90.0));

    assertThat(scale.isZeroKnown()).isFalse();
    assertThat(scale.vacuum(sample(0, 20_000))).isCloseTo(70, within(1e-9));
  }

  @Test
  void aPumpThatRanAlreadyLeavesTheZeroUnknown() {
    rest(-300);
    scale.entered(Phase.IDLE, Phase.RISE);

    assertThat(scale.isZeroKnown()).isFalse();
    scale.entered(Phase.RISE, Phase.RELEASE);
    scale.entered(Phase.RELEASE, Phase.IDLE);
    assertThat(scale.isZeroKnown()).isTrue();
  }

  /** The pump starts before its start is told: its first second must not become the zero. */
  @Test
  void theStartOfThePumpDoesNotMoveTheZero() {
    rest(-300);
    for (int i = 0; i < 24; i++) {
      scale.accept(sample(3 + i * 0.05, -1_500), Phase.IDLE);
    }
    scale.entered(Phase.IDLE, Phase.OPEN);

    assertThat(scale.vacuum(sample(5, -1_500))).isCloseTo(1.2, within(1e-9));
  }
}
