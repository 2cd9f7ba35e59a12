package org.thumbseal.simulate;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.nio.charset.StandardCharsets;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.ArrayList;
import java.util.HexFormat;
import java.util.Iterator;
import java.util.List;
import java.util.stream.Collectors;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.EnumSource;
import org.junit.jupiter.params.provider.ValueSource;
import org.thumbseal.simulate.Act.LoseLines;
import org.thumbseal.wire.Decoded;
import org.thumbseal.wire.LineDecoder;

/** What the line does to the lines. */
class TransportTest {
  private static final Scenario QUIET = quiet();

  private static Scenario quiet() {
    Weather room = new Weather(101_325, 20);
    Plant plant = new Plant(room, Jar.cylinder(2, 10), Pump.of(20, 0.1), Circuit.tight(3e-5));
    return new Scenario(plant, Sensor.ideal(100), Line.CLEAN, Script.quiet(100), 5);
  }

  private static List<TimedLine> lines(Scenario scenario) {
    List<TimedLine> lines = new ArrayList<>();
    scenario.lines().forEachRemaining(lines::add);
    return lines;
  }

  private static long bad(List<TimedLine> lines) {
    return lines.stream()
        .filter(l -> LineDecoder.decode(l.line()) instanceof Decoded.Rejected)
        .count();
  }

  private static String sha256(Scenario scenario) throws NoSuchAlgorithmException {
    String text =
        lines(scenario).stream()
            .map(l -> l.hostMicros() + " " + l.line())
            .collect(Collectors.joining("\n"));
    byte[] digest =
        MessageDigest.getInstance("SHA-256").digest(text.getBytes(StandardCharsets.ISO_8859_1));
    return HexFormat.of().formatHex(digest);
  }

  @ParameterizedTest
  @EnumSource(mode = EnumSource.Mode.EXCLUDE, names = "IDLE")
  void sameSeedSameBytesOtherSeedOtherBytes(SimulationKind kind) throws Exception {
    assertThat(sha256(Simulation.of(kind, 3))).isEqualTo(sha256(Simulation.of(kind, 3)));
    assertThat(sha256(Simulation.of(kind, 3))).isNotEqualTo(sha256(Simulation.of(kind, 4)));
  }

  /**
   * The same bytes on every machine and Java version. When a scenario is changed on purpose, these
   * change with it; when nothing was changed, a difference is a fault.
   */
  @ParameterizedTest
  @CsvSource({
    "sound, 4a3d23d5c3db53c07d4ac69b0c7d97ca886db8cb78feb244f9163fb62aa3e8c7",
    "noisy-line, ac870c40978d9de3604e943775729fc469130f31c62873558d649d110447231d",
    "leak, 1757cd4c232f5c008b4747fadbff0d1cde6fb7904032bbf9a934c80e170282b2"
  })
  void sameBytesEverywhere(String kind, String expected) throws Exception {
    assertThat(sha256(Simulation.of(SimulationKind.ofCode(kind).orElseThrow(), 2)))
        .isEqualTo(expected);
  }

  @Test
  void partsLostAndDamagedAreThoseAsked() {
    List<TimedLine> clean = lines(QUIET);
    List<TimedLine> lossy = lines(QUIET.with(new Line(0, 0.05, 0, false)));
    List<TimedLine> damaged = lines(QUIET.with(new Line(0, 0, 0.05, false)));

    // 10 053 lines, 5 %: 503 with a standard deviation of 22.
    assertThat(bad(clean)).isZero();
    assertThat(bad(lossy)).isZero();
    assertThat(clean.size() - lossy.size()).isBetween(413, 593);
    assertThat(bad(damaged)).isBetween(413L, 593L);
  }

  @Test
  void damagedLinesHaveNoLineEndAndKeepOneCharacterAByte() {
    assertThat(lines(QUIET.with(new Line(0, 0, 1, false))))
        .allSatisfy(l -> assertThat(l.line()).matches("[\\x00-\\xFF&&[^\\n\\r]]*"));
  }

  @Test
  void whatIsSentAtPowerUpArrivesWhole() {
    List<TimedLine> lines = lines(QUIET.with(new Line(0, 1, 0, false)));

    assertThat(lines).hasSize(3);
    assertThat(lines.get(2).line()).startsWith("S,0,0,");
  }

  @Test
  void firstLineCanBeHalfALine() {
    List<TimedLine> lines = lines(QUIET.with(new Line(0, 0, 0, true)));

    assertThat(lines.get(1).line()).endsWith(lines.get(0).line()).startsWith("I,1,");
    assertThat(lines.get(0).line()).isNotEqualTo(lines.get(1).line());
  }

  @Test
  void gapSwallowsItsSecondsAlone() {
    Scenario gap = QUIET.with(QUIET.script().with(20.005, new LoseLines(0.5)));
    List<String> all = lines(QUIET).stream().map(TimedLine::line).toList();
    List<String> left = lines(gap).stream().map(TimedLine::line).toList();

    assertThat(all).containsAll(left).hasSize(left.size() + 50);
    assertThat(left).noneMatch(l -> l.startsWith("S,2001,") || l.startsWith("S,2050,"));
    assertThat(left).anyMatch(l -> l.startsWith("S,2000,")).anyMatch(l -> l.startsWith("S,2051,"));
  }

  /** USB hands over in bursts: arrival is late by up to one interval and never goes back. */
  @ParameterizedTest
  @ValueSource(doubles = {0.016, 0.1})
  void burstsArriveTogether(double interval) {
    List<TimedLine> lines = lines(QUIET.with(new Line(interval, 0, 0, false)));
    double largest = 0;
    for (int i = 1; i < lines.size(); i++) {
      long step = lines.get(i).hostMicros() - lines.get(i - 1).hostMicros();
      assertThat(step).isNotNegative();
      largest = Math.max(largest, step * 1e-6);
    }

    assertThat(largest).isCloseTo(interval, within(0.0003));
    assertThat(lines.get(lines.size() - 1).hostMicros() * 1e-6).isBetween(100.0, 100.11);
  }

  /** Hours of idling are made line by line: the first lines of ten years take no time. */
  @Test
  void linesAreMadeAsTheyAreAskedFor() {
    Iterator<TimedLine> lines = QUIET.with(Script.quiet(3e8)).lines();
    for (int i = 0; i < 100; i++) {
      assertThat(lines.next().line()).isNotEmpty();
    }
    assertThat(lines).hasNext();
  }
}
