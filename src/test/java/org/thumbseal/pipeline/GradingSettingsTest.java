package org.thumbseal.pipeline;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Instant;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.thumbseal.calibration.Calibrations;
import org.thumbseal.capture.CaptureHeader;
import org.thumbseal.finding.Signs;
import org.thumbseal.finding.SoundRecord;
import org.thumbseal.grade.Criteria;
import org.thumbseal.wire.PlainLines;

/** No wish of the user is lost on the way to a test, and none of one pump reaches another. */
class GradingSettingsTest {
  private final Calibrations calibrations = new Calibrations(List.of());
  private GradingSettings said = GradingSettings.DEFAULT;

  @BeforeEach
  void sayEverything() throws Exception {
    PlainLines lines = PlainLines.parse("lines:column=1,unit=kPa,sign=gauge");
    said =
        GradingSettings.DEFAULT
            .withPump(p -> p.withAsset("SP-1").withJarLitres(2).withPinched(true))
            .withPump(p -> p.against(Optional.of(sound())))
            .at(GivenPlace.of(Optional.of(77.0), Optional.of(2300.0)))
            .withSensor(s -> s.withLines(Optional.of(lines), Optional.of("tp-9")))
            .withSensor(s -> s.withCalibrations(calibrations));
  }

  @Test
  void forAnotherPumpOnlyNameAndSoundRecordGo() {
    GradingSettings other = said.forPumpOf(header("SP-2"));
    assertThat(other)
        .isEqualTo(
            new GradingSettings(
                Criteria.DEFAULT,
                new GivenPump(Optional.empty(), Optional.of(2.0), true, Optional.empty()),
                said.place(),
                said.sensor()));
    assertThat(other.sensor().lines()).isPresent();
    assertThat(other.sensor().id()).contains("tp-9");
  }

  @Test
  void theSamePumpKeepsItsSoundRecord() {
    assertThat(said.forPumpOf(header("SP-1")).pump().sound()).isPresent();
    assertThat(said.forRecordOf(header("SP-1")).pump())
        .isEqualTo(GivenPump.NONE.against(said.pump().sound()));
  }

  @Test
  void aRecordOfAnotherRunTakesCriteriaAndCalibrationsAlone() {
    GradingSettings interrupted = said.forRecordOf(header("SP-2"));
    assertThat(interrupted.pump()).isEqualTo(GivenPump.NONE);
    assertThat(interrupted.place()).isEqualTo(GivenPlace.NONE);
    assertThat(interrupted.criteria()).isSameAs(said.criteria());
    assertThat(interrupted.sensor().calibrations()).isSameAs(calibrations);
    assertThat(interrupted.sensor().lines()).isEmpty();
    assertThat(interrupted.sensor().id()).isEmpty();
  }

  private static SoundRecord sound() {
    Signs signs = new Signs(0.02, 0.9, Optional.empty(), true);
    return new SoundRecord("of-march", Optional.of("SP-1"), signs);
  }

  private static CaptureHeader header(String asset) {
    return new CaptureHeader(Instant.EPOCH, Map.of("asset", asset));
  }
}
