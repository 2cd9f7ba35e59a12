package org.thumbseal.capture;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.nio.charset.Charset;
import java.nio.charset.StandardCharsets;
import java.time.Instant;
import java.util.List;
import java.util.random.RandomGenerator;
import java.util.random.RandomGeneratorFactory;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import org.thumbseal.sample.StreamEvent.Sample;
import org.thumbseal.wire.WireRecord.Reference;

class TableReaderTest {
  private static final String NUMBERED = "time=1:s,pressure=2:kPa";

  @ParameterizedTest
  @ValueSource(
      strings = {
        "t,p\n0,-1.5\n0.5,-20\n",
        "t;p\r\n0;-1.5\r\n0.5;-20",
        "t\tp\n0,0\t-1,5\n0,5\t-20,0\n",
        "t;p\n0;-1,5\n0,5;-20\n",
        "\"t\",\"p\"\n\"0\",\"-1,5\"\n\"0,5\",\"-20\"\n",
        "\uFEFFt,p\n0,-1.5\n0.5,-20\n",
        "t,p\r0,-1.5\r0.5,-20\r",
        "# logged by hand\n\nt,p\n0,-1.5\n\n0.5,-20,\n",
        " t , p \n 0 , -1.5 \n 5e-1 , -2.0E1 \n",
        "t,p\n0,\u22121.5\n.5,\u221220.\n"
      })
  void readsTheSameFromEveryCommonForm(String file) throws CaptureFormatException {
    Table table = read(file, "time=t:s,pressure=p:kPa");
    assertThat(table.samples()).containsExactly(sample(0, -1_500), sample(0.5, -20_000));
    assertThat(table.reference()).isEqualTo(Reference.GAUGE);
    assertThat(table.unreadable()).isZero();
    assertThat(table.implausible()).isZero();
    assertThat(table.started()).isEmpty();
  }

  @Test
  void readsOtherEncodings() throws CaptureFormatException {
    String file = "t [\u00b5s];p [kPa]\n1000;-1,5\n501000;-20\n";
    for (Charset charset :
        List.of(StandardCharsets.UTF_8, StandardCharsets.UTF_16, StandardCharsets.ISO_8859_1)) {
      Columns columns = Columns.parse("time=1,pressure=2");
      assertThat(TableReader.read(file.getBytes(charset), columns).samples())
          .as(charset.name())
          .containsExactly(sample(0, -1_500), sample(0.5, -20_000));
    }
  }

  @Test
  void needsNoNames() throws CaptureFormatException {
    assertThat(read("7,-1\n8,-2\n", NUMBERED).samples())
        .containsExactly(sample(0, -1_000), sample(1, -2_000));
    assertThat(read("seconds,pressure\n7,-1\n8,-2\n", NUMBERED).samples()).hasSize(2);
  }

  @Test
  void quotedFieldsMayHoldSeparatorsQuotesAndLineBreaks() throws CaptureFormatException {
    String file =
        "t,note,\"p, \"\"inner\"\"\"\n0,\"two\nlines, \"\"quoted\"\"\",-1\n1,plain \"text\",-2\n";
    Table table = read(file, "time=t:s,pressure=p, \"inner\":kPa");
    assertThat(table.samples()).containsExactly(sample(0, -1_000), sample(1, -2_000));
  }

  @ParameterizedTest
  @CsvSource({"us, 1000000, 1", "ms, 2500, 2.5", "s, 2.5, 2.5", "min, 0.5, 30"})
  void countsSecondsFromTheFirstRow(String unit, String second, double seconds)
      throws CaptureFormatException {
    Table table = read("0;-1\n" + second + ";-2\n", "time=1:" + unit + ",pressure=2:kPa");
    assertThat(table.samples().get(1).seconds()).isEqualTo(seconds);
  }

  @ParameterizedTest
  @CsvSource({
    "2026-03-02T07:15:00Z, 2026-03-02T07:15:00.250Z",
    "2026-03-02T13:00:00+05:45, 2026-03-02T07:15:00.25Z",
    "2026-03-02 07:15:00Z, 2026-03-02 07:15:00.250Z",
    "2026-03-02t07:15:00z, 2026-03-02t07:15:00.250z"
  })
  void readsIso8601(String first, String second) throws CaptureFormatException {
    Table table = read("t,p\n" + first + ",-1\n" + second + ",-2\n", "time=t,pressure=p:kPa");
    assertThat(table.samples()).containsExactly(sample(0, -1_000), sample(0.25, -2_000));
    assertThat(table.started()).contains(Instant.parse("2026-03-02T07:15:00Z"));
  }

  @Test
  void aTimeOfDayWithoutOffsetTellsSpansButNotWhen() throws CaptureFormatException {
    Table table =
        read("2026-03-02T07:15:00,5;-1\n2026-03-02T07:15:01,75;-2\n", "time=1,pressure=2:kPa");
    assertThat(table.samples().get(1).seconds()).isEqualTo(1.25);
    assertThat(table.started()).isEmpty();
  }

  /** RFC 3339 section 5.8: 1985-04-12T23:20:50.52Z is 482 196 050.52 s after 1970. */
  @Test
  void datesWhatCountsFrom1970() throws CaptureFormatException {
    Table table = read("1485000000.52,-1\n1485000001,-2\n", NUMBERED);
    assertThat(table.started()).contains(Instant.ofEpochSecond(1_485_000_000, 520_000_000));
    assertThat(read("482196050.52,-1\n482196051,-2\n", NUMBERED).started()).isEmpty();
    Table rfc = read("1985-04-12T23:20:50.52Z,-1\n", "time=1,pressure=2:kPa");
    assertThat(rfc.started()).contains(Instant.ofEpochSecond(482_196_050, 520_000_000));
  }

  @Test
  void turnsVacuumIntoNegativeGaugePressure() throws CaptureFormatException {
    Table table = read("0,600\n", "time=1:s,pressure=2:mmHg:vacuum");
    assertThat(table.samples().get(0).pascals()).isCloseTo(-79_993.43, within(0.01));
    assertThat(table.reference()).isEqualTo(Reference.GAUGE);
  }

  @Test
  void leavesAbsolutePressureAbsolute() throws CaptureFormatException {
    Table table = read("0,1013.25\n", "time=1:s,pressure=2:mbar:absolute");
    assertThat(table.samples()).containsExactly(sample(0, 101_325));
    assertThat(table.reference()).isEqualTo(Reference.ABSOLUTE);
  }

  @ParameterizedTest
  @ValueSource(strings = {"p [kPa]", "p_kPa", "p (kPa) filtered", "Pressure/kPa", "P in KPA"})
  void findsTheUnitInTheName(String name) throws CaptureFormatException {
    Table table = read("t_ms;" + name + "\n0;-1\n250;-2\n", "time=t_ms,pressure=" + name);
    assertThat(table.samples()).containsExactly(sample(0, -1_000), sample(0.25, -2_000));
  }

  @Test
  void theUnitGivenGoesBeforeTheOneInTheName() throws CaptureFormatException {
    assertThat(read("t_ms,p_kPa\n0,-1\n2,-2\n", "time=t_ms:s,pressure=p_kPa:hPa").samples())
        .containsExactly(sample(0, -100), sample(2, -200));
  }

  @Test
  void pointsThatGroupThousandsMustDoSoInTheWholeColumn() throws CaptureFormatException {
    assertThat(read("0.000;-1.000\n100.000;-2.000\n", NUMBERED).samples())
        .containsExactly(sample(0, -1_000), sample(100, -2_000));
    assertThat(read("100.000;-1\n1.100.000;-2\n", "time=1:us,pressure=2:kPa").samples())
        .containsExactly(sample(0, -1_000), sample(1, -2_000));
    assertThat(read("1.000,5;-1\n1.001;-2\n", NUMBERED).samples())
        .containsExactly(sample(0, -1_000), sample(0.5, -2_000));
    Table oneOdd = read("1.5;-1\n1.000.000;-2\n2.5;-3\n", NUMBERED);
    assertThat(oneOdd.samples()).containsExactly(sample(0, -1_000), sample(1, -3_000));
    assertThat(oneOdd.unreadable()).isEqualTo(1);
  }

  @Test
  void commasMayGroupThousandsToo() throws CaptureFormatException {
    assertThat(read("0;-1,000.5\n1;-2,000.0\n", "time=1:s,pressure=2:Pa").samples())
        .containsExactly(sample(0, -1_000.5), sample(1, -2_000));
  }

  @Test
  void countsRowsItCannotReadAndRowsOutOfOrder() throws CaptureFormatException {
    StringBuilder file = new StringBuilder("t,p\n");
    for (int i = 0; i < 30; i++) {
      file.append(i).append(",-1\n");
    }
    List.of("broken", ",-1", "30,", "30,NaN", "30,abc", "30,-1,5", "30,1e999")
        .forEach(row -> file.append(row).append('\n'));
    List.of("29,-1", "5,-1", "31,-1").forEach(row -> file.append(row).append('\n'));
    Table table = read(file.toString(), "time=t:s,pressure=p:kPa");
    assertThat(table.unreadable()).isEqualTo(7);
    assertThat(table.implausible()).isEqualTo(2);
    assertThat(table.samples()).hasSize(31);
    assertThat(table.samples().get(30)).isEqualTo(sample(31, -1_000));
  }

  @Test
  void refusesTimesThatMostlyStandStill() {
    assertRefused(
        "0,-1\n0,-2\n1,-3\n1,-4\n", NUMBERED, "stand still in 2 rows", "line 2: '0', '-2'");
  }

  @Test
  void saysWhichColumnsThereAre() {
    String file = "Time,Target,Pressure,PWM\n0,1,2,3\n";
    assertRefused(
        file,
        "time=Time:s,pressure=Presure:kPa",
        "no column named 'Presure'; the table has: Time, Target, Pressure, PWM");
    assertRefused(file, "time=Time:s,pressure=5:kPa", "no column 5", "the table has 4");
    assertRefused(file, "time=Time:s,pressure=0:kPa", "no column 0", "count from 1");
    assertRefused(file, "time=Time:s,pressure=1:kPa", "cannot both be column 'Time'");
    assertRefused("0,1\n", "time=t:s,pressure=p:kPa", "has no names", "1 to 2");
    assertRefused("p,t,p\n0,1,2\n", "time=t:s,pressure=p:kPa", "more than one", "'p'");
  }

  @Test
  void findsANameWithoutItsCapitals() throws CaptureFormatException {
    assertThat(read("TIME,Pressure\n0,1\n", "time=time:s,pressure=pressure:kPa").samples())
        .hasSize(1);
  }

  @Test
  void asksForAUnitItIsNotTold() {
    String file = "Time,Pressure\n0,1\n";
    assertRefused(
        file, "time=Time:s,pressure=Pressure", "pressure=Pressure:<unit>", "Pa, hPa, kPa");
    assertRefused(file, "time=Time,pressure=Pressure:kPa", "time=Time:<unit>", "us, ms, s, min");
  }

  @Test
  void asksWhatPressuresCountFromThatBeginLikeAmbient() throws CaptureFormatException {
    String file = "0,1017.04\n1,970.01\n";
    assertRefused(file, "time=1:s,pressure=2:hPa", "102 kPa", ":absolute, :gauge or :vacuum");
    assertThat(read(file, "time=1:s,pressure=2:hPa:gauge").reference()).isEqualTo(Reference.GAUGE);
  }

  /** Damage in any byte gives a table or one line of refusal, nothing else. */
  @Test
  void anyDamageIsATableOrARefusal() throws CaptureFormatException {
    long seed = 20_260_302;
    RandomGenerator random = RandomGeneratorFactory.of("L64X128MixRandom").create(seed);
    byte[] sound =
        "t;\"p \"\"1\"\"\";\n0.000;-1,5;x\n1.000;\"-2,5\";y\n2.000;-3;z\n"
            .getBytes(StandardCharsets.UTF_8);
    int read = 0;
    for (int i = 0; i < 20_000; i++) {
      byte[] damaged = sound.clone();
      for (int hits = 1 + random.nextInt(3); hits > 0; hits--) {
        damaged[random.nextInt(damaged.length)] = (byte) random.nextInt(256);
      }
      read += tableOrRefusal(damaged, "seed " + seed + ", round " + i);
    }
    assertThat(read).isBetween(5_000, 19_999);
  }

  private static int tableOrRefusal(byte[] bytes, String round) throws CaptureFormatException {
    Columns columns = Columns.parse("time=1:s,pressure=2:kPa");
    try {
      assertThat(TableReader.read(bytes, columns).samples()).as(round).isNotEmpty();
      return 1;
    } catch (CaptureFormatException e) {
      assertThat(e.getMessage()).as(round).hasLineCount(1).doesNotContain("\u0000");
      return 0;
    }
  }

  @Test
  void refusesWhatIsNoTable() {
    assertRefused("", NUMBERED, "empty");
    assertRefused("\uFEFF \n\n", NUMBERED, "empty");
    assertRefused("# only a remark\n", NUMBERED, "no rows");
    assertRefused("\u007fELF\u0000\u0001,\n", NUMBERED, "not text");
    assertRefused("just words\n", NUMBERED, "no column 2", "has 1");
    assertRefused("t,p\n", "time=t:s,pressure=p:kPa", "no row with a time and a pressure");
    assertRefused(
        "t,p\nx,y\n", "time=t:s,pressure=p:kPa", "no row with a time", "line 2: 'x', 'y'");
    assertRefused("t,p\n0,\"1\n2,3\n", "time=t:s,pressure=p:kPa", "line 2", "never closed");
  }

  @Test
  void refusesTablesThatAreTooLarge() throws CaptureFormatException {
    byte[] large = new byte[TableReader.LARGEST_BYTES + 1];
    Columns columns = Columns.parse(NUMBERED);
    assertThatThrownBy(() -> TableReader.read(large, columns))
        .isInstanceOf(CaptureFormatException.class)
        .hasMessageContaining("larger than 32 MiB");
  }

  @Test
  void quotesHostileCellsInOneShortLine() {
    assertThatThrownBy(
            () ->
                read(
                    "t,p\n\"a\nb\u001b[31m\",\"" + "9".repeat(100_000) + "\"\n",
                    "time=t:s,pressure=p:kPa"))
        .isInstanceOf(CaptureFormatException.class)
        .message()
        .hasLineCount(1)
        .doesNotContain("\u001b")
        .hasSizeLessThan(300);
  }

  private static void assertRefused(String file, String columns, String... parts) {
    assertThatThrownBy(() -> read(file, columns))
        .isInstanceOf(CaptureFormatException.class)
        .hasMessageContainingAll(parts)
        .message()
        .hasLineCount(1);
  }

  private static Table read(String file, String columns) throws CaptureFormatException {
    return TableReader.read(file.getBytes(StandardCharsets.UTF_8), Columns.parse(columns));
  }

  private static Sample sample(double seconds, double pascals) {
    return new Sample(seconds, seconds, pascals);
  }
}
