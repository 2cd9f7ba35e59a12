package org.thumbseal.wire;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.OptionalLong;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import org.thumbseal.wire.Decoded.Good;
import org.thumbseal.wire.Decoded.Rejected;
import org.thumbseal.wire.WireRecord.Plain;
import org.thumbseal.wire.WireRecord.Reference;

class PlainLinesTest {
  private static Decoded decode(String format, String line) throws LineFormatException {
    return PlainLines.parse(format).decode(line);
  }

  /** mmHg: 133.322387415 Pa; psi: 6894.757 Pa (NIST SP 811 B.8). */
  @ParameterizedTest
  @CsvSource(
      delimiterString = " | ",
      value = {
        "lines:column=1,unit=Pa,sign=gauge | -35000 | -35000",
        "lines:column=1,unit=kPa,sign=vacuum | 35.0 | -35000",
        "lines:column=1,unit=kPa,sign=absolute | 66.325 | 66325",
        "lines:column=1,unit=mmHg,sign=vacuum | +600 | -79993.43",
        "lines:column=1,unit=PSI,sign=gauge | -10 | -68947.57",
        "lines:column=2,unit=hPa,sign=gauge | x y, -350.00 | -35000",
        "lines:column=2,columns=3,separator=semicolon,unit=mbar,sign=gauge | 1;-350;ok | -35000",
        "lines:separator=space,sign=gauge,unit=Pa,column=2 | 12   -77 | -77",
        "lines:/P=(?<p>-?\\d+) Pa/,unit=Pa,sign=gauge | P=-77 Pa | -77",
        "lines:/(?<p>[^/]+)/,unit=Pa,sign=gauge | -77. | -77",
        "lines:/v\\/(?<p>.+)/,unit=Pa,sign=vacuum | v/77 | -77",
      })
  void readsThePressure(String format, String line, double pascals) throws Exception {
    assertThat(decode(format, line)).isInstanceOf(Good.class);
    Plain reading = (Plain) ((Good) decode(format, line)).content();
    assertThat(reading.pascals()).isCloseTo(pascals, within(0.01));
    assertThat(reading.micros()).isEmpty();
  }

  @ParameterizedTest
  @CsvSource({
    "us, 1200345, 1200345, 4294967296",
    "ms, 4294967295, 4294967295000, 4294967296000",
    "s, 12.345678, 12345678,",
    "min, 2, 120000000,"
  })
  void readsTheTimeAndKnowsWhenItBeginsAgain(String unit, String text, long micros, Long wrap)
      throws Exception {
    PlainLines byColumn = PlainLines.parse("lines:column=2,time=1:" + unit + ",unit=Pa,sign=gauge");
    PlainLines byGroup =
        PlainLines.parse("lines:/(?<t>\\S+) (?<p>\\S+)/,time=" + unit + ",unit=Pa,sign=gauge");

    Plain expected = new Plain(OptionalLong.of(micros), -5);
    assertThat(byColumn.decode(text + ",-5")).isEqualTo(new Good(expected));
    assertThat(byGroup.decode(text + " -5")).isEqualTo(new Good(expected));
    assertThat(byColumn.wrapMicros())
        .isEqualTo(wrap == null ? OptionalLong.empty() : OptionalLong.of(wrap));
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "",
        " ",
        "-35",
        "1,-35,",
        ",1,-35",
        "1 ,",
        "1,--35",
        "1,-3 5",
        "1,-35000-34990",
        "1,3e4",
        "1,NaN",
        "1,Infinity",
        "1,0x10",
        "1,-35\u0000",
        "1,-3\u00b25",
        "x,-35",
        "-1,2,-35",
        "1,12345678901",
        "1;-35",
        "1,-35*57AD",
        "1,٣٥"
      })
  void aLineThatDoesNotFitAsAWholeIsNone(String line) throws Exception {
    assertThat(decode("lines:column=2,time=1:ms,unit=Pa,sign=gauge", line))
        .isEqualTo(new Rejected(RejectCause.MALFORMED));
  }

  @Test
  void longLinesAndValuesOutOfRangeAreToldApart() throws Exception {
    String format = "lines:column=1,unit=kPa,sign=vacuum";
    assertThat(decode(format, "1" + "0".repeat(96))).isEqualTo(new Rejected(RejectCause.TOO_LONG));
    assertThat(decode(format, "850")).isEqualTo(new Rejected(RejectCause.IMPLAUSIBLE));
    assertThat(decode(format + ",range=0..100", "-1"))
        .isEqualTo(new Rejected(RejectCause.IMPLAUSIBLE));
    assertThat(PlainLines.parse(format + ",range=0..100").range())
        .contains(new PressureRange(-100_000, -0.0));
    assertThat(PlainLines.parse(format).range()).isEmpty();
    assertThat(PlainLines.parse(format).reference()).isEqualTo(Reference.GAUGE);
  }

  /** Each of these takes a plain matcher longer than anyone lives. */
  @ParameterizedTest
  @ValueSource(strings = {"(?<p>(1+)+)x", "(?<p>(1|11)*)x", "(?<p>(.*)*)(.*)*(.*)*(.*)*(.*)*x"})
  @Timeout(20)
  void noExpressionHoldsTheProgramUp(String expression) throws Exception {
    PlainLines lines = PlainLines.parse("lines:/" + expression + "/,unit=Pa,sign=gauge");
    for (int i = 0; i < 100; i++) {
      assertThat(lines.decode("1".repeat(96))).isEqualTo(new Rejected(RejectCause.MALFORMED));
    }
  }

  @Test
  void randomBytesNeverThrow() throws Exception {
    PlainLines lines = PlainLines.parse("lines:/(?<t>\\S+) (?<p>\\S+)/,time=s,unit=bar,sign=gauge");
    Random random = new Random(5);
    for (int i = 0; i < 20_000; i++) {
      StringBuilder line = new StringBuilder();
      int length = random.nextInt(99);
      for (int k = 0; k < length; k++) {
        line.append(
            random.nextBoolean()
                ? "0123456789.- ".charAt(random.nextInt(13))
                : (char) random.nextInt(256));
      }
      assertThat(lines.decode(line.toString())).as("%d: %s", i, line).isNotNull();
    }
  }

  @ParameterizedTest
  @CsvSource(
      delimiterString = " | ",
      value = {
        "columns:1 | is not known; write lines:column=N",
        "lines: | does not fit; write",
        "lines:column=1 | no unit=...: say Pa, hPa",
        "lines:column=1,unit=kPa | no sign=...: say gauge (negative under vacuum)",
        "lines:unit=kPa,sign=gauge | no column=...",
        "lines:column=0,unit=kPa,sign=gauge | column: '0' is no number of a column, 1 to 40",
        "lines:column=p,unit=kPa,sign=gauge | column: 'p' is no number of a column",
        "lines:column=1,unit=furlong,sign=gauge | unit=furlong is not known: it is one of Pa",
        "lines:column=1,unit=kPa,sign=minus | sign=minus is not known",
        "lines:column=1,unit=kPa,sign=gauge,sign=gauge | sign is given twice",
        "lines:column=1,unit=kPa,sign=gauge,colour=red | does not fit; write",
        "lines:column=2,columns=1,unit=kPa,sign=gauge | columns=1, but column 2 is named",
        "lines:column=2,time=2:ms,unit=kPa,sign=gauge | cannot be the same column",
        "lines:column=2,time=ms,unit=kPa,sign=gauge | write time=COLUMN:UNIT",
        "lines:column=2,time=1:iso,unit=kPa,sign=gauge | time=iso is not known",
        "lines:column=2,separator=x,unit=kPa,sign=gauge | separator=x is not known",
        "lines:column=1,range=5,unit=kPa,sign=gauge | write range=LOW..HIGH",
        "lines:column=1,range=5..5,unit=kPa,sign=gauge | both ends are the same",
        "lines:/(?<p>.*/,unit=kPa,sign=gauge | not a regular expression: Unclosed group",
        "lines:/.*/,unit=kPa,sign=gauge | no group for the pressure in /.*/",
        "lines:/(?<p>.*)/,time=ms,unit=kPa,sign=gauge | no group for the time",
        "lines:/(?<p>.*) | must stand between two slashes",
        "lines:/(?<p>.*)/unit=kPa | must stand between two slashes",
        "lines:/(?<p>.*)/,column=1,unit=kPa,sign=gauge | does not fit; write",
      })
  void everyMistakeIsOneClearLine(String format, String says) {
    assertThatThrownBy(() -> PlainLines.parse(format))
        .isInstanceOf(LineFormatException.class)
        .hasMessageStartingWith("format: ")
        .hasMessageContaining(says)
        .message()
        .doesNotContain("\n");
  }

  /** Each of these kept a matcher busy for years, and most without a look at any character. */
  @ParameterizedTest
  @ValueSource(
      strings = {
        "(?<p>)(|)(|)(|)(|)(|)(|)(|)(|)(|)(|)(|)(|)(|)(|)(|)(|)(|)(|)(|)(|)(|)(|)(|)(|)(|)(|)(|)",
        "(?<p>.*)^?^?^?^?^?^?^?^?^?^?^?^?^?^?^?^?^?^?^?^?^?^?^?^?^?^?^?^?^?^?^?^?^?^?^?^?^?^?^?^?x",
        "(?<p>.*)(a*|b*)(a*|b*)(a*|b*)(a*|b*)(a*|b*)(a*|b*)(a*|b*)(a*|b*)(a*|b*)(a*|b*)(a*|b*)x",
        "(?:(?:^){2000000000}){2000000000}(?<p>.*)",
        "(?x)(?:(?:^){2 000 000}){2 000 000}(?<p>.*)",
        "\\Q[\\E(?<p>.*)",
        "(?<p>.*)(a{0,1}){9}(a{0}){9}(a{0}){9}(a{0,1}){9}"
      })
  void anExpressionThatCouldTakeYearsIsRefused(String expression) {
    assertThatThrownBy(() -> PlainLines.parse("lines:/" + expression + "/,unit=Pa,sign=gauge"))
        .isInstanceOf(LineFormatException.class)
        .hasMessageContaining("could take too long");
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "\\s*(?:p|P)=\\s*(?<p>[-+]?\\d+(?:\\.\\d*)?)\\s*(?:kPa)?\\s*;?.*?",
        "(?<t>\\d{1,10})[,;] ?\\d{3},(?<p>.+?)\\??",
        "\\d{4}-\\d{2}-\\d{2}T\\d{2}:\\d{2}:\\d{2}Z,(?<p>-?\\d+(?:\\.\\d+)?),.*"
      })
  void anExpressionAsTheyAreWrittenIsNot(String expression) throws LineFormatException {
    assertThat(PlainLines.parse("lines:/" + expression + "/,unit=Pa,sign=gauge").text())
        .contains(expression);
  }

  @Test
  void whatNoHeaderCanHoldIsRefused() {
    String end = ",unit=Pa,sign=gauge";
    assertThatThrownBy(() -> PlainLines.parse("lines:/(?<p>" + "a".repeat(200) + ")/" + end))
        .hasMessageContaining("at most 200");
    assertThatThrownBy(() -> PlainLines.parse("lines:/\t(?<p>.*)/" + end))
        .hasMessageContaining("ASCII");
  }
}
