package org.thumbseal.phase;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.thumbseal.sample.StreamEvent;
import org.thumbseal.sample.StreamEvent.Gap;
import org.thumbseal.sample.StreamEvent.Restart;
import org.thumbseal.sample.StreamEvent.Sample;

class PhaseDetectorTest {
  private static final double OPEN = 0.3;

  private List<Phase> phases = new ArrayList<>();
  private List<TestWindow> tests = new ArrayList<>();

  @BeforeEach
  void nothingYet() {
    phases = new ArrayList<>();
    tests = new ArrayList<>();
  }

  private void detect(List<StreamEvent> events) {
    PhaseDetector detector = new PhaseDetector(0, this::note);
    events.forEach(detector::accept);
    detector.end();
  }

  private void note(PhaseEvent event) {
    if (event instanceof PhaseEvent.Entered entered) {
      phases.add(entered.phase());
    } else if (event instanceof PhaseEvent.Tested tested) {
      tests.add(tested.window());
    }
  }

  /** Pump off, pump on, inlet blocked at 9 s. */
  private static Vacuum blocked() {
    return new Vacuum().steady(4, 0).steady(5, OPEN);
  }

  private static Vacuum released(Vacuum held) {
    return held.towards(3, OPEN, 0.15).steady(3, 0);
  }

  /** The bounds that a detector has to hold for: 10 to 1000 Hz, noise, steps, tau. */
  @ParameterizedTest
  @CsvSource({
    "10,   0,    0,    5",
    "10,   0.3,  0,    5",
    "50,   0.12, 0.71, 5",
    "100,  0.05, 0.01, 5",
    "200,  0.3,  0.1,  5",
    "1000, 0.3,  0,    5",
    "100,  0.1,  0,    0.5",
    "100,  0.1,  0,    40",
  })
  void oneTestInOrder(double hertz, double noise, double step, double tau) {
    Vacuum vacuum = released(blocked().towards(5 * tau + 5, 90, tau));
    double end = vacuum.end() - 6;
    detect(vacuum.read(hertz, noise, step));

    assertThat(tests).hasSize(1);
    assertThat(tests.get(0).onsetSeconds()).isBetween(8.9, 9.2 + tau / 15);
    assertThat(tests.get(0).baseKilopascals()).isCloseTo(OPEN, within(0.75));
    assertThat(tests.get(0).ending()).isEqualTo(Ending.RELEASED);
    assertThat(tests.get(0).endSeconds()).isBetween(end, end + 1.5);
    assertThat(phases.indexOf(Phase.RISE)).isPositive();
    assertThat(phases)
        .containsSubsequence(Phase.IDLE, Phase.RISE, Phase.HOLD, Phase.RELEASE)
        .doesNotContain(Phase.DECAY);
  }

  @Test
  void theWindowHoldsWhatCameBeforeAndAllOfTheTest() {
    Vacuum vacuum = released(blocked().towards(25, 90, 5));
    List<StreamEvent> events = vacuum.read(100, 0.05, 0);
    detect(events);

    List<StreamEvent> window = tests.get(0).events();
    assertThat(window.get(0)).isEqualTo(events.get(0));
    assertThat(window.get(window.size() - 1).seconds())
        .isGreaterThanOrEqualTo(tests.get(0).endSeconds());
    assertThat(window).isEqualTo(events.subList(0, window.size()));
  }

  /** A pump with something in its inlet: the step of switching it on is no test. */
  @ParameterizedTest
  @CsvSource({"0.3, 0.2", "3, 0.2", "6, 0.15", "10, 0.1"})
  void switchingThePumpOnIsNoTest(double open, double tau) {
    detect(new Vacuum().steady(4, 0).towards(20, open, tau).towards(8, 0, 0.2).read(100, 0.1, 0));

    assertThat(tests).isEmpty();
    assertThat(phases).containsOnly(Phase.IDLE, Phase.OPEN).contains(Phase.OPEN);
  }

  @Test
  void spikesOfSingleSamplesAreNoTest() {
    List<StreamEvent> events = new ArrayList<>(blocked().steady(60, OPEN).read(100, 0.1, 0));
    for (int i = 50; i < events.size(); i += 100) {
      Sample sample = (Sample) events.get(i);
      events.set(i, new Sample(sample.seconds(), sample.seconds(), -60_000));
    }
    detect(events);

    assertThat(tests).isEmpty();
    assertThat(phases).containsOnly(Phase.IDLE, Phase.OPEN);
  }

  @Test
  void strokesOfThePumpDoNotCutARise() {
    Vacuum vacuum =
        blocked()
            .then(
                30,
                t ->
                    OPEN
                        + 90 * (1 - Math.exp(-t / 6))
                        + 4 * Math.exp(-t / 6) * Math.sin(2 * Math.PI * 24 * t));
    detect(released(vacuum).read(200, 0.1, 0));

    assertThat(tests).hasSize(1);
    assertThat(tests.get(0).ending()).isEqualTo(Ending.RELEASED);
    assertThat(tests.get(0).onsetSeconds()).isCloseTo(9, within(0.3));
  }

  /** The thumb loses the inlet for half a second: that is still the same test. */
  @ParameterizedTest
  @CsvSource({"5", "20", "40"})
  void aSlipIsPartOfTheTest(double depth) {
    Vacuum vacuum = blocked().towards(5, 90, 6);
    double high = vacuum.at(vacuum.end());
    vacuum.towards(0.5, high - depth, 0.1).towards(30, 90, 6);
    detect(released(vacuum).read(100, 0.1, 0));

    assertThat(tests).hasSize(1);
    assertThat(tests.get(0).onsetSeconds()).isCloseTo(9, within(0.3));
    assertThat(tests.get(0).ending()).isEqualTo(Ending.RELEASED);
  }

  @Test
  void aPumpSwitchedOffWhileBlockedDecays() {
    detect(blocked().towards(30, 90, 5).towards(40, 0, 60).read(50, 0.1, 0));

    assertThat(phases).endsWith(Phase.HOLD, Phase.DECAY);
    assertThat(tests).hasSize(1);
    assertThat(tests.get(0).ending()).isEqualTo(Ending.DECAYED);
  }

  @Test
  void aRecordMayEndInMidRise() {
    detect(blocked().towards(4, 90, 5).read(100, 0.1, 0));

    assertThat(tests).hasSize(1);
    assertThat(tests.get(0).ending()).isEqualTo(Ending.CUT_OFF);
  }

  @Test
  void aSensorThatRestartsBreaksTheTestOff() {
    List<StreamEvent> events =
        new ArrayList<>(released(blocked().towards(25, 90, 5)).read(100, 0.1, 0));
    events.add(1_200, new Restart(12));
    detect(events);

    assertThat(tests).hasSize(1);
    assertThat(tests.get(0).ending()).isEqualTo(Ending.INTERRUPTED);
    assertThat(tests.get(0).endSeconds()).isCloseTo(12, within(0.1));
    assertThat(tests.get(0).events()).anyMatch(Restart.class::isInstance);
  }

  @Test
  void aLongSilenceBreaksTheTestOffAndAShortOneDoesNot() {
    List<StreamEvent> events = released(blocked().towards(25, 90, 5)).read(100, 0.1, 0);
    detect(without(events, 1_200, 1_300));
    assertThat(tests).hasSize(1);
    assertThat(tests.get(0).ending()).isEqualTo(Ending.RELEASED);

    nothingYet();
    detect(without(events, 1_200, 1_600));
    assertThat(tests).hasSize(1);
    assertThat(tests.get(0).ending()).isEqualTo(Ending.INTERRUPTED);
  }

  private static List<StreamEvent> without(List<StreamEvent> events, int from, int to) {
    List<StreamEvent> left = new ArrayList<>(events.subList(0, from));
    double last = events.get(from - 1).seconds();
    left.add(new Gap(last, events.get(to).seconds() - last, to - from));
    left.addAll(events.subList(to, events.size()));
    return left;
  }

  @Test
  void twoTestsInOneStreamAreTwo() {
    Vacuum vacuum = released(blocked().towards(25, 90, 5)).steady(5, OPEN);
    double second = vacuum.end();
    detect(released(vacuum.towards(20, 75, 4)).read(100, 0.1, 0));

    assertThat(tests).hasSize(2);
    assertThat(tests.get(1).onsetSeconds()).isCloseTo(second, within(0.3));
    assertThat(tests.get(1).events().get(0).seconds()).isGreaterThan(tests.get(0).endSeconds() - 2);
  }

  /** A record that begins at the moment of blocking. */
  @Test
  void aTestMayBeginWithTheRecord() {
    detect(released(new Vacuum().steady(0.05, OPEN).towards(25, 90, 5)).read(100, 0.05, 0));

    assertThat(tests).hasSize(1);
    assertThat(tests.get(0).onsetSeconds()).isLessThan(0.5);
  }
}
