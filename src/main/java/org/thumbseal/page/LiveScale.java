package org.thumbseal.page;

import java.time.Instant;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import org.thumbseal.calibration.Calibrations;
import org.thumbseal.measurement.AmbientPressure;
import org.thumbseal.measurement.SensorCalibration;
import org.thumbseal.phase.Phase;
import org.thumbseal.pipeline.GradingSettings;
import org.thumbseal.sample.StreamEvent.Sample;
import org.thumbseal.wire.WireRecord.Identity;
import org.thumbseal.wire.WireRecord.Reference;

/** From what a sensor sends to the vacuum on the page: calibration and zero. */
final class LiveScale {
  private static final double PASCALS = 1_000;
  private static final double STANDARD_AIR = 101.325;

  /** A zero further off than this share of the span is none (common practice). */
  private static final double LARGEST_SHARE = 0.02;

  private static final double USUAL_SPAN = 100;

  private final LiveZero zero = new LiveZero();
  private SensorCalibration calibration = SensorCalibration.none();
  private Optional<Identity> identity = Optional.empty();
  private Optional<AmbientPressure> ambient = Optional.empty();
  private boolean startUnseen;
  private boolean known;

  /** Another session: nothing is known. */
  void forget() {
    zero.forget();
    calibration = SensorCalibration.none();
    identity = Optional.empty();
    ambient = Optional.empty();
    startUnseen = false;
    known = false;
  }

  /** Takes what the sensor has said of itself. */
  void know(LiveFacts facts, GradingSettings settings, Instant now) {
    ambient = facts.ambient();
    if (!known || !facts.identity().equals(identity)) {
      known = true;
      identity = facts.identity();
      calibration =
          settings
              .sensor()
              .calibrations()
              .of(
                  new Calibrations.Test(
                      identity.map(Identity::sensorId).or(settings.sensor()::id),
                      Optional.of(now),
                      reference()));
    }
  }

  private Reference reference() {
    return identity.map(Identity::reference).orElse(Reference.GAUGE);
  }

  void accept(Sample sample, @Nullable Phase phase) {
    if (phase == Phase.IDLE) {
      zero.add(sample.seconds(), -sample.pascals() / PASCALS);
    }
  }

  /** A blocking without the start of a pump before it: the pump ran all along. */
  void entered(@Nullable Phase before, Phase now) {
    if (now == Phase.IDLE) {
      zero.restart();
      startUnseen = false;
    } else if (now == Phase.RISE && before == Phase.IDLE) {
      startUnseen = true;
    }
  }

  /** Vacuum, kPa. */
  double vacuum(Sample sample) {
    double rest = isZeroPlausible() ? zero.kilopascals() : restByTheBook();
    return calibration.corrected(-sample.pascals() / PASCALS) - calibration.corrected(rest);
  }

  private double restByTheBook() {
    return reference() == Reference.GAUGE
        ? 0
        : -ambient.map(AmbientPressure::kilopascals).orElse(STANDARD_AIR);
  }

  boolean isZeroKnown() {
    return isZeroPlausible() && !startUnseen;
  }

  /** A gauge sensor in order reads about nothing at rest, an absolute one the air. */
  private boolean isZeroPlausible() {
    if (!zero.isFound()) {
      return false;
    }
    double found = zero.kilopascals();
    double largest = LARGEST_SHARE * identity.map(LiveScale::span).orElse(USUAL_SPAN);
    if (reference() == Reference.GAUGE) {
      return Math.abs(found) <= largest;
    }
    return ambient
        .map(a -> Math.abs(a.kilopascals() + found) <= largest + 2 * a.standardUncertainty())
        .orElse(AmbientPressure.isPlausible(-found));
  }

  private static double span(Identity sensor) {
    return (sensor.highPascals() - sensor.lowPascals()) / PASCALS;
  }

  /** What a gauge sensor reads at rest, kPa of vacuum; for an absolute one that is the air. */
  Optional<Double> zero() {
    return zero.isFound() && reference() == Reference.GAUGE
        ? Optional.of(zero.kilopascals())
        : Optional.empty();
  }

  boolean isCalibrated() {
    return calibration.standing() != SensorCalibration.Standing.ABSENT;
  }
}
