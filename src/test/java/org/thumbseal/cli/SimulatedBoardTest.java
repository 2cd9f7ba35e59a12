package org.thumbseal.cli;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.HexFormat;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.awaitility.Awaitility;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.thumbseal.json.Json;
import org.thumbseal.wire.FirmwareBuild;
import tools.jackson.databind.JsonNode;

/**
 * The reference firmware on a simulated ATmega328P, whose converter sees what an element would give
 * during a pump test; the harness states the truth. The board runs as fast as it goes, into a
 * capture that is replayed, but for one test in real time over a pseudo-terminal.
 */
@Timeout(240)
class SimulatedBoardTest {
  /** The usual firmware and the simulated board: what make finds made it does not make again. */
  @TempDir private static Path made;

  @TempDir private Path folder;
  private FirmwareBuild build;

  @BeforeEach
  void compilers() {
    build = FirmwareBuild.forTheBoard(made);
  }

  /** From the voltage at a pin to a sealed document. */
  @Test
  void aTestInRealTimeIsGradedAndSealed() throws Exception {
    Path port = folder.resolve("board");
    Path results = folder.resolve("results");
    Path key = folder.resolve("keys/k.pem");
    Process board = board("port=" + port, "seconds=42", "rest=12");
    try {
      Awaitility.await().until(() -> Files.exists(port) || !board.isAlive());
      try (ProgramProcess watch = ProgramProcess.watch(folder, port, results, key)) {
        watch.awaitOut(": PASS SP-014");
        watch.signal("TERM");
        assertThat(watch.awaitEnd()).isZero();
      }
      Path document = new ResultFiles(results).documents().get(0);
      isTrueInRealTime(ResultFiles.read(document), said(board));
      assertThat(CommandRun.of("verify", results, "--key", key).code()).isZero();
    } finally {
      board.destroyForcibly();
    }
  }

  @Test
  void aTestIsMeasuredWithinItsUncertainty() throws Exception {
    Map<String, Double> truth = record();
    JsonNode result = replayed(0);
    isTrue(result, truth);
    assertThat(truth).containsEntry("lost", 0.0).containsEntry("starts", 1.0);
    assertThat(codes(result)).containsExactlyInAnyOrder("rise-in-time", "maximum-reached");
  }

  /** A clock that is 1 % off is put right by the times of arrival. */
  @Test
  void aFastClockIsPutRight() throws Exception {
    isTrue(replayedOf("clock-off=0.01"), record("clock-off=0.01"));
    isTrue(replayedOf("clock-off=-0.01"), record("clock-off=-0.01"));
  }

  @Test
  void countersThatWrapInMidTestCostNothing() throws Exception {
    Path firmware =
        FirmwareBuild.forTheBoard(folder)
            .make("sensor.elf", "EXTRA=-DFIRST_N=4294966196 -DFIRST_T=4283967296");
    Map<String, Double> truth = recordBy(firmware, "first-n=4294966196");
    assertThat(Files.readString(capture())).contains(" S,4294967295,").contains(" S,0,");
    isTrue(replayed(0), truth);
  }

  @Test
  void aBounceOfTheKeyIsOnePress() throws Exception {
    Map<String, Double> truth = record("trouble=key", "at=11");
    List<String> keys =
        Files.readString(capture()).lines().filter(line -> line.contains(" K,")).toList();
    assertThat(keys).hasSize(2);
    assertThat(keys.get(0)).contains(",1*");
    assertThat(keys.get(1)).contains(",0*");
    isTrue(replayed(0), truth);
  }

  /** All of them 4 s after the inlet was blocked: none may be graded, and each is named. */
  @ParameterizedTest
  @CsvSource({
    "reset, gap-in-test, restart",
    "brown-out, sensor-fault, POWER",
    "dip, sensor-fault, POWER",
    "stuck, sensor-fault, ADC",
    "dead, sensor-fault, ADC",
    "wire-off, range-clipped, wire",
    "loose, range-clipped, wire",
    "hang, sensor-fault, WATCHDOG"
  })
  void troubleIsNamedAndNotGraded(String trouble, String code, String word) throws Exception {
    record("trouble=" + trouble, "at=11");
    JsonNode result = replayed(1);
    assertThat(result.path("verdict").stringValue()).isEqualTo("invalid");
    assertThat(codes(result)).contains(code);
    assertThat(result.path("reasons").toString()).contains(word);
  }

  /** 4.4 V: the brown-out detector lets it pass, and only a sensor that knows its supply tells. */
  @Test
  void aSupplyThatSinksALittleIsNamedByATrimmedSensor() throws Exception {
    Files.write(folder.resolve("memory"), trim("-80000"));
    record("memory=" + folder.resolve("memory"), "trouble=dip", "dip-mv=4400", "at=11");
    JsonNode result = replayed(1);
    assertThat(result.path("verdict").stringValue()).isEqualTo("invalid");
    assertThat(codes(result)).contains("sensor-fault");
    assertThat(result.path("reasons").toString()).contains("POWER");
  }

  @Test
  void aTrimIsWhatItReadsBy() throws Exception {
    // The element reads as its data sheet says, so a trim by 2 % shows as 2 %.
    Files.write(folder.resolve("memory"), trim("-81600"));
    Map<String, Double> truth = record("memory=" + folder.resolve("memory"));
    JsonNode result = replayed(0);
    assertThat(result.at("/test/sensor/id").stringValue()).isEqualTo("tp-07");
    assertThat(result.at("/measurements/maximumVacuum/value").doubleValue())
        .isCloseTo(told(truth, "maximum-vacuum-kpa") * 1.02, within(0.1));
  }

  @Test
  void aSpoiltTrimLetsNoPressureThrough() throws Exception {
    byte[] memory = trim("-81600");
    memory[30] ^= 1;
    memory[94] ^= 1;
    Files.write(folder.resolve("memory"), memory);
    Map<String, Double> truth = record("memory=" + folder.resolve("memory"), "seconds=5");
    assertThat(truth).containsEntry("samples", 0.0);
    assertThat(Files.readString(capture())).contains(",TRIM*");
  }

  /** Of a sensor that said -80000 Pa when this was true, with the supply in order. */
  private byte[] trim(String truePascals) throws Exception {
    String tool = build.make("trim").toString();
    return eeprom(
        FirmwareBuild.runs(List.of(tool, "tp-07", "0", "0", "-80000", truePascals, "225")));
  }

  /** What a programmer would write: the rows of an Intel HEX file into an erased memory. */
  private static byte[] eeprom(String hex) {
    byte[] memory = new byte[128];
    Arrays.fill(memory, (byte) 0xFF);
    for (String row : hex.lines().toList()) {
      byte[] bytes = HexFormat.of().parseHex(row.substring(1));
      int at = ((bytes[1] & 0xFF) << 8) | (bytes[2] & 0xFF);
      System.arraycopy(bytes, 4, memory, at, bytes[3] == 0 ? bytes[0] : 0);
    }
    return memory;
  }

  private static double told(Map<String, Double> truth, String name) {
    return Objects.requireNonNull(truth.get(name), name);
  }

  private void isTrue(JsonNode result, Map<String, Double> truth) {
    assertThat(result.path("verdict").stringValue()).isEqualTo("pass");
    near(result, "riseTime", told(truth, "rise-time-s"));
    near(result, "maximumVacuum", told(truth, "maximum-vacuum-kpa"));
    near(result, "openVacuum", told(truth, "open-vacuum-kpa"));
  }

  /** By this computer's clock: where it is loaded, the simulated board and pump are slow. */
  private static void isTrueInRealTime(JsonNode result, Map<String, Double> truth) {
    near(result, "riseTime", told(truth, "rise-time-here-s"), stated(result, "riseTime"));
    near(result, "maximumVacuum", told(truth, "maximum-vacuum-kpa"));
    near(result, "openVacuum", told(truth, "open-vacuum-kpa"));
  }

  /**
   * Within its stated uncertainty; and that one is no excuse: the element here is without error.
   */
  private static void near(JsonNode result, String name, double truth) {
    near(result, name, truth, Math.min(stated(result, name), 0.005 * truth + 0.05));
  }

  private static void near(JsonNode result, String name, double truth, double allowed) {
    double value = result.path("measurements").path(name).path("value").doubleValue();
    assertThat(value).as(name).isCloseTo(truth, within(allowed));
  }

  private static double stated(JsonNode result, String name) {
    return result.path("measurements").path(name).path("expandedUncertainty").doubleValue();
  }

  private static List<String> codes(JsonNode result) {
    return result.path("reasons").valueStream().map(r -> r.path("code").stringValue()).toList();
  }

  private Path capture() {
    return folder.resolve("board.log");
  }

  private JsonNode replayedOf(String word) throws Exception {
    record(word);
    return replayed(0);
  }

  private JsonNode replayed(int code) {
    CommandRun run =
        CommandRun.of(
            "replay",
            "--json",
            "--asset",
            "SP-014",
            "--ambient-kpa",
            "101.1",
            "--jar-l",
            "2",
            capture());
    assertThat(run.code()).as(run.out() + run.err()).isEqualTo(code);
    return Json.mapper().readTree(run.out());
  }

  /** Runs the usual firmware into a capture; what the harness says is true. */
  private Map<String, Double> record(String... words) throws Exception {
    return recordBy(build.make("sensor.elf"), words);
  }

  private Map<String, Double> recordBy(Path firmware, String... words) throws Exception {
    List<String> all = Stream.concat(Stream.of("capture=" + capture()), Stream.of(words)).toList();
    return said(board(firmware, all));
  }

  private Process board(String... words) throws Exception {
    return board(build.make("sensor.elf"), List.of(words));
  }

  private Process board(Path firmware, List<String> words) throws Exception {
    List<String> command =
        Stream.concat(
                Stream.of(build.make("simulated").toString(), firmware.toString()), words.stream())
            .toList();
    return new ProcessBuilder(command)
        .redirectError(ProcessBuilder.Redirect.DISCARD)
        .redirectOutput(folder.resolve("said.txt").toFile())
        .start();
  }

  /** Its lines of a name and a number. */
  private Map<String, Double> said(Process board) throws Exception {
    assertThat(board.waitFor()).isZero();
    return Files.readAllLines(folder.resolve("said.txt")).stream()
        .map(line -> line.split(" ", 2))
        .filter(words -> words.length == 2 && words[1].matches("[0-9.]+"))
        .collect(Collectors.toMap(words -> words[0], words -> Double.valueOf(words[1])));
  }
}
