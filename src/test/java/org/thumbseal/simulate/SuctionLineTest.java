package org.thumbseal.simulate;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import org.junit.jupiter.api.Test;
import org.thumbseal.simulate.SuctionLine.Stretch;

class SuctionLineTest {
  private static final SuctionLine TIGHT =
      new SuctionLine(
          Simulation.of(SimulationKind.SOUND, 7).plant(),
          List.of(
              new Stretch(0.06, 0, false), new Stretch(0.05, 0, true), new Stretch(0.1, 0, false)));

  @Test
  void aLeakIsInTheCircuitAsLongAsItsStretchIs() {
    SuctionLine line = TIGHT.leaking(1, 2);
    assertThat(line.from(0).leakLitresPerMinute()).isCloseTo(2, within(1e-9));
    assertThat(line.from(1).leakLitresPerMinute()).isCloseTo(2, within(1e-9));
    assertThat(line.from(2).leakLitresPerMinute()).isZero();
  }

  @Test
  void theVolumeIsThatOfWhatIsLeft() {
    double jar = TIGHT.plant().jar().litres();
    assertThat(TIGHT.from(0).jar().litres()).isCloseTo(jar + 0.21, within(1e-9));
    assertThat(TIGHT.from(1).jar().litres()).isCloseTo(jar + 0.15, within(1e-9));
    assertThat(TIGHT.from(2).jar().litres()).isCloseTo(0.1, within(1e-9));
  }

  @Test
  void aStretchHasAVolumeAndLetsNothingOut() {
    assertThatThrownBy(() -> new Stretch(0, 0, false)).hasMessageContaining("volume");
    assertThatThrownBy(() -> TIGHT.leaking(0, -1)).hasMessageContaining("leak");
  }
}
