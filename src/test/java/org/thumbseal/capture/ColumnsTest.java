package org.thumbseal.capture;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import org.thumbseal.quantity.PressureUnit;
import org.thumbseal.quantity.TimeScale;
import org.thumbseal.wire.PressureSense;

class ColumnsTest {
  @Test
  void readsNamesUnitsAndSense() throws CaptureFormatException {
    Columns columns = Columns.parse("time=Time:s,pressure=Pressure:kPa:gauge");
    assertThat(columns.time()).isEqualTo(new Columns.Time("Time", Optional.of(TimeScale.SECOND)));
    assertThat(columns.pressure())
        .isEqualTo(
            new Columns.Pressure(
                "Pressure",
                Optional.of(PressureUnit.KILOPASCAL),
                Optional.of(PressureSense.GAUGE)));
  }

  @Test
  void takesEitherOrderAndLeavesOutWhatIsNotGiven() throws CaptureFormatException {
    Columns columns = Columns.parse("pressure=3:vacuum:mmhg, time=1");
    assertThat(columns.time()).isEqualTo(new Columns.Time("1", Optional.empty()));
    assertThat(columns.pressure())
        .isEqualTo(
            new Columns.Pressure(
                "3",
                Optional.of(PressureUnit.MILLIMETRE_OF_MERCURY),
                Optional.of(PressureSense.VACUUM)));
  }

  @Test
  void namesMayHoldSpacesBracketsAndCommas() throws CaptureFormatException {
    Columns columns = Columns.parse("time=Time, since start [ms],pressure=p (abs)");
    assertThat(columns.time().name()).isEqualTo("Time, since start [ms]");
    assertThat(columns.pressure().name()).isEqualTo("p (abs)");
  }

  @ParameterizedTest
  @CsvSource({
    "us, MICROSECOND",
    "\u00b5s, MICROSECOND",
    "\u03bcs, MICROSECOND",
    "ms, MILLISECOND",
    "s, SECOND",
    "sec, SECOND",
    "min, MINUTE",
    "iso, ISO_8601",
    "ISO8601, ISO_8601"
  })
  void knowsTheUnitsOfTime(String symbol, TimeScale scale) throws CaptureFormatException {
    assertThat(Columns.parse("time=t:" + symbol + ",pressure=p").time().scale()).contains(scale);
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "",
        "Time,Pressure",
        "time=Time",
        "pressure=Pressure",
        "time=,pressure=p",
        "time=:s,pressure=p",
        "time=Time,presure=Pressure",
        "time=a,time=b,pressure=p",
        "time=Time:kPa,pressure=p",
        "time=Time:s:ms,pressure=p",
        "time=Time:,pressure=p",
        "time=Time,pressure=p:kp",
        "time=Time,pressure=p:kPa:hPa",
        "time=Time,pressure=p:kPa:gauge:absolute",
        "time=Time,pressure=p:kPa,other=3"
      })
  void refusesOthersInOneLineThatShowsTheForm(String text) {
    assertThatThrownBy(() -> Columns.parse(text))
        .isInstanceOf(CaptureFormatException.class)
        .message()
        .startsWith("columns: ")
        .containsPattern("time=<name or number>|unit of")
        .hasLineCount(1);
  }

  @Test
  void namesTheUnitItDoesNotKnowAndThoseItDoes() {
    assertThatThrownBy(() -> Columns.parse("time=t,pressure=p:kp"))
        .hasMessageContaining("':kp'")
        .hasMessageContaining("kPa, mbar, bar, mmHg, Torr, inHg, cmH2O, psi, atm");
  }
}
