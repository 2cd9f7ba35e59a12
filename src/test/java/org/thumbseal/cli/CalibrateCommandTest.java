package org.thumbseal.cli;

import static org.assertj.core.api.Assertions.assertThat;
import static org.awaitility.Awaitility.await;

import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.io.InputStream;
import java.io.PipedInputStream;
import java.io.PipedOutputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.concurrent.CompletableFuture;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.thumbseal.json.JsonGate;
import org.thumbseal.link.PtyPair;
import org.thumbseal.wire.Crc16;
import tools.jackson.databind.node.ObjectNode;

class CalibrateCommandTest {
  private static final String GAUGE = "tp-01,1.0.0,G,-115000,15000,50";
  private static final String ABSOLUTE = "tp-09,1.0.0,A,0,120000,50";

  @TempDir private Path folder;
  private final ByteArrayOutputStream out = new ByteArrayOutputStream();
  private final ByteArrayOutputStream err = new ByteArrayOutputStream();
  private final StringBuilder wire = new StringBuilder();
  private long sample;

  private int run(InputStream in, Object... more) {
    List<String> args = new ArrayList<>(List.of("calibrate", "--reference", "RG-7"));
    args.addAll(List.of("--certificate", "C-2211", "--reference-uncertainty", "2 mmHg"));
    args.addAll(List.of("--results", folder.resolve("results").toString()));
    args.addAll(List.of("--key", folder.resolve("key/signing-key.pem").toString()));
    Arrays.stream(more).map(Object::toString).forEach(args::add);
    return Main.run(args.toArray(String[]::new), new Streams(in, out, err));
  }

  private int typed(Object... more) {
    return run(InputStream.nullInputStream(), more);
  }

  private static InputStream lines(String... lines) {
    return new ByteArrayInputStream(
        (String.join("\n", lines) + "\n").getBytes(StandardCharsets.UTF_8));
  }

  private String err() {
    return err.toString(StandardCharsets.UTF_8);
  }

  private String out() {
    return out.toString(StandardCharsets.UTF_8);
  }

  private ObjectNode document() throws Exception {
    return JsonGate.read(out().getBytes(StandardCharsets.UTF_8));
  }

  private void line(String body) {
    wire.append(Crc16.seal(body)).append('\n');
  }

  /** The sensor goes from one pressure to another, in Pa, within some seconds. */
  private void reads(double seconds, double from, double to) {
    int count = (int) Math.round(seconds * 50);
    for (int i = 0; i < count; i++, sample++) {
      long pascals = Math.round(from + (to - from) * i / count);
      line("S," + sample + "," + sample * 20_000 + "," + pascals);
    }
  }

  private Path recorded() throws Exception {
    return Files.writeString(folder.resolve("wire.bin"), wire);
  }

  /** Steps at -400, -40400 and -80400 Pa, with the way up between them. */
  private void threeSteps() {
    line("I,1," + GAUGE);
    reads(9, -400, -400);
    reads(2, -400, -40_400);
    reads(9, -40_400, -40_400);
    reads(2, -40_400, -80_400);
    reads(9, -80_400, -80_400);
  }

  @Test
  void typedPairsAreSealedWithAllThatWasSaid() throws Exception {
    int code =
        typed(
            "--json",
            "--sensor",
            "tp-01",
            "--temperature",
            "24",
            "--by",
            "A. Other",
            "--date",
            "2026-03-01",
            "--pair",
            "0.4=0",
            "81.6=609 mmHg");

    assertThat(code).as(err()).isZero();
    ObjectNode document = document();
    assertThat(document.at("/pairs/1/reference").doubleValue()).isEqualTo(81.1933);
    assertThat(document.at("/reference/uncertainty/expandedUncertainty").doubleValue())
        .isEqualTo(0.2666);
    assertThat(document.path("due").stringValue()).isEqualTo("2027-03-01");
    assertThat(document.path("by").stringValue()).isEqualTo("A. Other");
    assertThat(document.at("/asFound/error/value").doubleValue()).isEqualTo(0.4067);
    assertThat(document.at("/ledger/sequence").intValue()).isEqualTo(1);
  }

  /**
   * A board that prints milliseconds and kPa of vacuum: what it reads is a twentieth too little.
   */
  @Test
  void aBoardThatPrintsNumbersIsCalibratedToo() throws Exception {
    for (double level : new double[] {0.4, 40.4, 80.4}) {
      for (int i = 0; i < 450; i++, sample++) {
        wire.append(sample * 20).append(',').append(level).append('\n');
      }
    }
    String format = "lines:column=2,time=1:ms,unit=kPa,sign=vacuum";
    Object[] port = {"--json", "--port", "file:" + recorded(), "--format", format};
    assertThat(run(lines("0", "40", "80", ""), port)).isEqualTo(2);
    assertThat(err()).contains("name the --sensor").hasLineCount(1);
    assertThat(folder.resolve("results")).doesNotExist();
    err.reset();

    Object[] named = Arrays.copyOf(port, port.length + 2);
    named[port.length] = "--sensor";
    named[port.length + 1] = "BOARD-1";
    assertThat(run(lines("0", "40", "80", ""), named)).as(err()).isZero();
    assertThat(document().at("/pairs/2/sensor").doubleValue()).isEqualTo(80.4);
    assertThat(document().at("/sensor/id").asString()).isEqualTo("BOARD-1");
  }

  @Test
  void theSameCalibrationTwiceIsStoredOnce() {
    for (int i = 0; i < 2; i++) {
      assertThat(typed("--sensor", "a", "--date", "2026-03-01", "--pair", "0=0", "80=81")).isZero();
    }
    Path stored = folder.resolve("results").resolve("2026");
    assertThat(stored).isDirectoryContaining("glob:**/*_a_calibration_*.json");
    assertThat(stored.toFile().list()).hasSize(1);
    assertThat(out()).contains("CALIBRATED  sensor a, against RG-7 (certificate C-2211)");
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      textBlock =
          """
          --pair 0=0 80=81                                        | name the --sensor
          --sensor a                                              | give the pairs
          --sensor a --pair 0=0                                   | two different points
          --sensor a --pair 0=0 80=81 --port file:x               | give the pairs
          --sensor a --pair 0=0 80:81                             | is no pair
          --sensor a --pair 0=0 80=eighty                         | 'eighty' is no pressure
          --sensor a --pair 0=0 80=81furlong                      | 'furlong' is no unit
          --sensor a --pair 0=0 80=81 --due 2020-01-01            | must be after the calibration
          --sensor a --pair 0=0 80=81 --due soon                  | 'soon' is no date
          --sensor a --pair 0=0 80=81 --valid-months 0            | between 1 and 60
          --sensor a --pair 0=0 80=81 --valid-months 6 --due 2999-01-01 | not both
          --sensor a --pair 0=0 80=81 --date 2999-01-01           | still to come
          --sensor a --pair 0=0 80=81 --reference-uncertainty 9   | should be specified only once
          --port -                                                | is where you type
          --port file:no-such-file                                | no such file
          """)
  void mistakesGetOneLineAndNothingIsStored(String args, String why) {
    int code = typed((Object[]) args.split(" +", -1));

    assertThat(code).isEqualTo(2);
    assertThat(err().lines().filter(l -> !l.contains("signing key"))).hasSize(1);
    assertThat(err()).contains(why);
    assertThat(folder.resolve("results/2026")).doesNotExist();
    assertThat(out()).isEmpty();
  }

  @Test
  void atTheSensorPointByPoint() throws Exception {
    threeSteps();
    int code = run(lines("0", "41.0", "82"), "--json", "--port", "file:" + recorded());

    assertThat(code).as(err()).isZero();
    assertThat(document().at("/sensor/id").stringValue()).isEqualTo("tp-01");
    assertThat(document().at("/pairs/0/sensor").doubleValue()).isEqualTo(0.4);
    assertThat(document().at("/pairs/2/sensor").doubleValue()).isEqualTo(80.4);
    assertThat(document().at("/pairs/2/reference").doubleValue()).isEqualTo(82);
    assertThat(err()).contains("The sensor stands at 40.4", "Points: 3");
  }

  @Test
  void aSlipOfTheHandCostsThatLineAlone() throws Exception {
    threeSteps();
    int code =
        run(
            lines("zero", "0", "-41", "41 furlongs", "41", "", "615 mmHg", ""),
            "--json",
            "--port",
            "file:" + recorded());

    assertThat(code).as(err()).isZero();
    assertThat(err())
        .contains("'zero' is no pressure", "not -41.0 kPa: leave a minus sign out", "no unit");
    assertThat(document().path("pairs")).hasSizeBetween(2, 3);
    assertThat(document().at("/pairs/1/reference").doubleValue()).isEqualTo(41);
  }

  @Test
  void tooFewPointsAreToldAndWhatWasTakenIsKept() throws Exception {
    threeSteps();
    int code = run(lines("0", "", "41", "82"), "--json", "--port", "file:" + recorded());

    assertThat(code).as(err()).isZero();
    assertThat(err())
        .contains("two different points or more, and there is one", "what was taken is kept");
    assertThat(document().path("pairs")).hasSizeBetween(2, 3);
  }

  @Test
  void aPairThatWasMistypedCanBeTakenBack() throws Exception {
    threeSteps();
    int code =
        run(lines("undo", "0", "14", "undo", "82"), "--json", "--port", "file:" + recorded());

    assertThat(code).as(err()).isZero();
    assertThat(err())
        .contains("nothing to take back")
        .contains("Taken back: sensor 40.40 kPa, reference 14.00 kPa. Points: 1");
    assertThat(document().path("pairs")).hasSize(2);
    assertThat(document().at("/pairs/1/reference").doubleValue()).isEqualTo(82);
  }

  @Test
  void aSensorThatFallsSilentTooEarlyStoresNothing() throws Exception {
    line("I,1," + GAUGE);
    reads(3, -400, -400);
    int code = run(lines("0"), "--port", "file:" + recorded());

    assertThat(code).isEqualTo(2);
    assertThat(err()).contains("no calibration was stored: the sensor has fallen silent");
  }

  @Test
  void anotherSensorThanTheOneNamed() throws Exception {
    threeSteps();
    int code = run(lines("0", "41"), "--sensor", "tp-02", "--port", "file:" + recorded());

    assertThat(code).isEqualTo(2);
    assertThat(err()).contains("the sensor says it is tp-01, not tp-02");
  }

  /** Its zero is the air of the first point. */
  @Test
  void anAbsoluteSensorBeginsInTheOpenAir() throws Exception {
    line("I,1," + ABSOLUTE);
    reads(9, 100_900, 100_900);
    reads(2, 100_900, 20_500);
    reads(3, 20_500, 20_500);
    int code = run(lines("40", "0", "82"), "--json", "--port", "file:" + recorded());

    assertThat(code).as(err()).isZero();
    assertThat(err()).contains("begin with both open to the air", "100.90 kPa absolute");
    assertThat(document().at("/pairs/0/sensor").doubleValue()).isZero();
    assertThat(document().at("/pairs/1/sensor").doubleValue()).isEqualTo(80.4);
  }

  /** Over a port nothing waits: what is typed while the needle moves is not taken. */
  @Test
  void overAPort() throws Exception {
    try (PtyPair pair = PtyPair.in(folder);
        PipedOutputStream keys = new PipedOutputStream();
        PipedInputStream in = new PipedInputStream(keys)) {
      CompletableFuture<Integer> code =
          CompletableFuture.supplyAsync(() -> run(in, "--json", "--port", pair.port()));
      awaitSaid("Begin with sensor");
      line("I,1," + GAUGE);
      reads(3, -400, -400);
      step(pair, keys, "stands at 0.40 kPa", "0");
      awaitSaid("Points: 1");
      reads(1, -400, -60_400);
      send(pair);
      keys.write("61\n".getBytes(StandardCharsets.UTF_8));
      awaitSaid("does not stand still");
      reads(3, -60_400, -60_400);
      step(pair, keys, "stands at 60.40 kPa", "61.5");
      awaitSaid("Points: 2");
      keys.write('\n');
      keys.flush();
      feedUntilDone(pair, code);

      assertThat(code.join()).as(err()).isZero();
      assertThat(document().path("pairs")).hasSize(2);
      assertThat(document().at("/pairs/1/reference").doubleValue()).isEqualTo(61.5);
    }
  }

  private void step(PtyPair pair, PipedOutputStream keys, String said, String answer)
      throws Exception {
    send(pair);
    awaitSaid(said);
    keys.write((answer + "\n").getBytes(StandardCharsets.UTF_8));
    keys.flush();
  }

  private void send(PtyPair pair) throws Exception {
    pair.send(wire.toString().getBytes(StandardCharsets.UTF_8));
    wire.setLength(0);
  }

  private void feedUntilDone(PtyPair pair, CompletableFuture<Integer> code) {
    await()
        .atMost(Duration.ofSeconds(20))
        .until(
            () -> {
              reads(0.1, -60_400, -60_400);
              send(pair);
              return code.isDone();
            });
  }

  private void awaitSaid(String text) {
    await().atMost(Duration.ofSeconds(20)).until(() -> err().contains(text));
  }
}
