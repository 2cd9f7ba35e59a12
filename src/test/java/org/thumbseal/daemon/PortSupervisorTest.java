package org.thumbseal.daemon;

import static org.assertj.core.api.Assertions.assertThat;
import static org.thumbseal.daemon.ScriptedLink.good;

import java.math.BigDecimal;
import java.time.Duration;
import java.util.Arrays;
import java.util.List;
import java.util.concurrent.CopyOnWriteArrayList;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.thumbseal.link.LinkUnavailable;
import org.thumbseal.link.LinkUnavailable.Reason;

/** The supervisor's decisions, on a clock that only moves when it waits. */
@Timeout(60)
class PortSupervisorTest {
  private static final String IDENTITY = good("I,1,S1,1.0,G,-100000,0,100");
  private static final String SAMPLE = good("S,0,1000,-35");
  private static final Duration SECOND = Duration.ofSeconds(1);

  private final ScriptedLink link = new ScriptedLink();
  private final Recorder recorder = new Recorder();
  private final List<String> changes = new CopyOnWriteArrayList<>();

  /** Runs the script to its end. */
  private PortSupervisor run(Limits limits) throws InterruptedException {
    PortSupervisor supervisor =
        new PortSupervisor(link, recorder, new Surroundings(link.clock, changes::add, limits));
    link.whenDone(supervisor::requestStop);
    supervisor.start();
    supervisor.awaitEnd();
    return supervisor;
  }

  private PortSupervisor run() throws InterruptedException {
    return run(Limits.STANDARD);
  }

  @Test
  void linesComeWithTheirHostTimeBetweenOpenedAndClosed() throws Exception {
    link.opening(
        link.after(SECOND, IDENTITY + "\r\n"),
        link.after(SECOND, SAMPLE + "\n" + SAMPLE.substring(0, 4)),
        link.after(SECOND, SAMPLE.substring(4) + "\n"));
    assertThat(run().outcome()).isEqualTo(PortOutcome.STOPPED);
    assertThat(recorder.told)
        .containsExactly(
            "opened 2026-03-02T07:15:00Z scripted",
            "1000000 " + IDENTITY,
            "2000000 " + SAMPLE,
            "3000000 " + SAMPLE,
            "closed 3000000 stopped");
    assertThat(changes).containsExactly("scripted: a sensor is speaking");
  }

  @Test
  void theHalfLineAtOpeningIsLeftOutAndALaterBadLineIsNot() throws Exception {
    link.opening(link.bytes(SAMPLE.substring(3) + "\n" + SAMPLE + "\n" + "S,rubbish\n"));
    run();
    assertThat(recorder.told("0 ")).containsExactly("0 " + SAMPLE, "0 S,rubbish");
  }

  @Test
  void whatComesWhileABoardBootsIsThrownAway() throws Exception {
    link.settling(Duration.ofMillis(2_500))
        .opening(
            link.after(SECOND, "boot 1.0\n" + IDENTITY + "\n"),
            link.after(SECOND.multipliedBy(2), SAMPLE + "\n"));
    run();
    assertThat(recorder.told("3000000 ")).containsExactly("3000000 " + SAMPLE);
    assertThat(recorder.told).hasSize(3);
  }

  @Test
  void aBannerBeforeTheFirstGoodLineIsNoErrorWithoutASettleTimeEither() throws Exception {
    link.opening(
        link.bytes("\u00ff\u0000boot loader 2\nready\n\n"),
        link.after(SECOND.multipliedBy(2), IDENTITY + "\nlater\n"));
    run();
    assertThat(recorder.told("2000000 ")).containsExactly("2000000 " + IDENTITY, "2000000 later");
    assertThat(recorder.told).hasSize(4);
    assertThat(changes).containsExactly("scripted: a sensor is speaking");
  }

  @Test
  void aFiniteInputKeepsItsFirstLineWhateverItIsAndEnds() throws Exception {
    link.thatEnds().opening(link.bytes("half a line\n" + SAMPLE + "\n"), link.lost());
    assertThat(run().outcome()).isEqualTo(PortOutcome.INPUT_ENDED);
    assertThat(recorder.told)
        .containsExactly(
            "opened 2026-03-02T07:15:00Z scripted",
            "0 half a line",
            "0 " + SAMPLE,
            "closed 0 end of input");
    assertThat(changes).endsWith("scripted: end of input");
    assertThat(link.timesClosed()).isEqualTo(1);
  }

  @Test
  void aTimeThatRanBeforeAnybodyReadIsCountedFromItsOwnBeginning() throws Exception {
    link.thatEnds()
        .arrivingAt(2_000)
        .aged(Duration.ofMillis(500))
        .opening(link.bytes(SAMPLE + "\n"), link.lost());
    run();
    assertThat(recorder.told)
        .startsWith("opened 2026-03-02T07:14:59.500Z scripted", "2000 " + SAMPLE);
  }

  @Test
  void aFiniteInputThatCannotBeOpenedIsGivenUp() throws Exception {
    PortSupervisor ended = runRefused(link.thatEnds(), Reason.UNKNOWN, "no such file");
    assertThat(ended.outcome()).isEqualTo(PortOutcome.NOT_OPENED);
    assertThat(ended.refusal().map(LinkUnavailable::reason)).contains(Reason.UNKNOWN);
    assertThat(changes).containsExactly("scripted: no such file");
    assertThat(recorder.told).isEmpty();
  }

  private PortSupervisor runRefused(ScriptedLink refusing, Reason reason, String message)
      throws InterruptedException {
    refusing.refusing(reason, message);
    return run();
  }

  @Test
  void withoutTheSerialLibraryWaitingIsNoUse() throws Exception {
    assertThat(runRefused(link, Reason.NO_LIBRARY, "no library").outcome())
        .isEqualTo(PortOutcome.NOT_OPENED);
  }

  @Test
  void aPortThatIsNotWaitedForIsGivenUpAtTheFirstFailure() throws Exception {
    Limits impatient = new Limits(BackOff.STANDARD, Duration.ofSeconds(5), 64, false);
    link.refusing(Reason.BUSY, "in use");
    assertThat(run(impatient).outcome()).isEqualTo(PortOutcome.NOT_OPENED);
    assertThat(changes).containsExactly("scripted: in use");
  }

  @Test
  void aPortThatIsNotWaitedForIsWaitedForOnceItWasThere() throws Exception {
    Limits impatient = new Limits(BackOff.STANDARD, Duration.ofSeconds(5), 64, false);
    link.opening(link.lost()).refusing(Reason.MISSING, "gone").opening(link.bytes(SAMPLE + "\n"));
    assertThat(run(impatient).outcome()).isEqualTo(PortOutcome.STOPPED);
    assertThat(recorder.told("opened")).hasSize(2);
  }

  @Test
  void triesAreOneTwoAndThenFourSecondsApart() throws Exception {
    for (int i = 0; i < 5; i++) {
      link.refusing(Reason.MISSING, "no such port");
    }
    run();
    assertThat(link.openedAt.stream().map(Duration::toSeconds))
        .containsExactly(0L, 1L, 3L, 7L, 11L, 15L);
  }

  @Test
  void aPortThatIsThereIsTriedEverMoreRarelyAndAtLastTheReplugIsAdvised() throws Exception {
    for (int i = 0; i < 7; i++) {
      link.refusing(Reason.FAILED, "cannot be opened (error 5 of the system)");
    }
    run();
    assertThat(link.openedAt.stream().map(Duration::toSeconds))
        .containsExactly(0L, 1L, 3L, 7L, 15L, 25L, 35L, 45L);
    assertThat(changes)
        .containsExactly(
            "scripted: cannot be opened (error 5 of the system); trying again",
            "scripted: failed 5 times in a row; unplug it, wait 5 s and plug it in again");
  }

  @Test
  void aPortThatWasPluggedInIsTriedAsQuicklyAsAtFirst() throws Exception {
    for (int i = 0; i < 6; i++) {
      link.refusing(Reason.MISSING, "no such port");
    }
    link.refusing(Reason.BUSY, "in use").refusing(Reason.BUSY, "in use");
    run();
    assertThat(link.openedAt.stream().map(Duration::toSeconds))
        .containsExactly(0L, 1L, 3L, 7L, 11L, 15L, 19L, 20L, 22L);
  }

  @Test
  void afterALossTheFirstTryIsASecondLaterAgain() throws Exception {
    link.refusing(Reason.MISSING, "no such port")
        .refusing(Reason.MISSING, "no such port")
        .opening(link.bytes(SAMPLE + "\n"), link.lost());
    run();
    assertThat(link.openedAt.stream().map(Duration::toSeconds)).containsExactly(0L, 1L, 3L, 4L);
  }

  @Test
  void aPortThatOpensAndIsLostAtOnceIsTriedEverMoreRarely() throws Exception {
    link.opening(link.lost()).opening(link.lost()).opening(link.lost());
    run();
    assertThat(link.openedAt.stream().map(Duration::toSeconds)).containsExactly(0L, 1L, 3L, 7L);
  }

  @Test
  void changesAreToldOncePerChangeNotPerTry() throws Exception {
    link.refusing(Reason.MISSING, "no such port")
        .refusing(Reason.MISSING, "no such port (there are: COM1)")
        .refusing(Reason.BUSY, "in use")
        .refusing(Reason.BUSY, "in use")
        .opening(link.bytes(SAMPLE + "\n"), link.lost())
        .refusing(Reason.MISSING, "no such port")
        .opening(link.bytes(SAMPLE + "\n"));
    run();
    assertThat(changes)
        .containsExactly(
            "scripted: no such port; waiting for it",
            "scripted: in use; trying again",
            "scripted: a sensor is speaking",
            "scripted: lost (unplugged or switched off); waiting for it",
            "scripted: a sensor is speaking");
  }

  @Test
  void aSensorThatFallsSilentIsLostAndOpenedAgain() throws Exception {
    link.opening(
            link.bytes(SAMPLE + "\n"),
            link.silence(Duration.ofMillis(4_900)),
            link.silence(Duration.ofMillis(100)))
        .opening(link.bytes(SAMPLE + "\n"));
    run();
    assertThat(recorder.told)
        .containsExactly(
            "opened 2026-03-02T07:15:00Z scripted",
            "0 " + SAMPLE,
            "closed 5000000 no good line for 5 s",
            "opened 2026-03-02T07:15:06Z scripted",
            "0 " + SAMPLE,
            "closed 0 stopped");
    assertThat(recorder.quiet).containsExactly("quiet 4900000", "quiet 5000000");
  }

  @ParameterizedTest
  @CsvSource({"1000, 2.5", "100, 2.5", "8, 2.5", "4, 5", "0.5, 40", "0.001, 60"})
  void theLongestSilenceFollowsFromTheRateTheSensorSays(String hertz, String seconds)
      throws Exception {
    link.opening(
        link.bytes(good("I,1,S1,1.0,G,-100000,0," + hertz) + "\n"),
        link.silence(secondsOf(seconds).minusMillis(1)),
        link.silence(Duration.ofMillis(1)));
    run();
    assertThat(recorder.told("closed").get(0)).endsWith(" no good line for " + seconds + " s");
  }

  private static Duration secondsOf(String text) {
    return Duration.ofMillis(new BigDecimal(text).movePointRight(3).longValueExact());
  }

  @Test
  void aNetworkMayHoldBackLongerThanAPort() throws Exception {
    link.network(SECOND.multipliedBy(5))
        .opening(
            link.bytes(IDENTITY + "\n"),
            link.silence(Duration.ofMillis(4_999)),
            link.silence(Duration.ofMillis(1)));
    run();
    assertThat(recorder.told("closed").get(0)).endsWith(" no good line for 5 s");
  }

  @Test
  void modemCommandsThatComeBackPointToTheModemService() throws Exception {
    link.opening(link.bytes("AT\r\nATE0\r\nAT+GCAP\r\nATLAS\n"));
    run();
    assertThat(changes).containsExactly("scripted: " + Impression.MODEM.text());
    assertThat(Impression.MODEM.text()).contains("ModemManager");
  }

  @Test
  void aSensorThatOnlyRavesIsLostToo() throws Exception {
    link.opening(
            link.bytes(SAMPLE + "\n"),
            link.after(SECOND.multipliedBy(3), "rubbish\n"),
            link.after(SECOND.multipliedBy(2), "rubbish\n"))
        .opening(link.lost());
    run();
    assertThat(recorder.told("closed")).first().isEqualTo("closed 5000000 no good line for 5 s");
  }

  @Test
  void aFiniteInputMayBeSilentForAsLongAsItLikes() throws Exception {
    link.thatEnds()
        .opening(
            link.bytes(SAMPLE + "\n"),
            link.silence(Duration.ofHours(9)),
            link.bytes(SAMPLE + "\n"),
            link.lost());
    run();
    assertThat(recorder.told("opened")).hasSize(1);
    assertThat(recorder.told).hasSize(4);
  }

  @Test
  void beforeTheFirstGoodLineSilenceIsDoubtedOnceAndNotALoss() throws Exception {
    link.opening(
        link.silence(SECOND.multipliedBy(5)),
        link.silence(SECOND.multipliedBy(5)),
        link.bytes(SAMPLE + "\n"));
    run();
    assertThat(recorder.told("opened")).hasSize(1);
    assertThat(changes)
        .containsExactly(
            "scripted: " + Impression.NOTHING.text(), "scripted: " + Impression.SPEAKING.text());
  }

  @Test
  void whoHasASilentPortOpenTooIsNamed() throws Exception {
    String other = "; another program, pid 12 (cat), has scripted open: close it";
    link.alsoOpenIn("pid 12 (cat)")
        .opening(link.silence(SECOND.multipliedBy(5)), link.bytes(SAMPLE + "\n"), silentTooLong());
    run();
    assertThat(changes)
        .containsExactly(
            "scripted: " + Impression.NOTHING.text() + other,
            "scripted: " + Impression.SPEAKING.text(),
            "scripted: no good line for 5 s; waiting for it" + other);
  }

  private ScriptedLink.Step silentTooLong() {
    return link.silence(SECOND.multipliedBy(5));
  }

  /** Every other line taken away: to be told from a lame sensor by who has the port open. */
  @ParameterizedTest
  @CsvSource({"true, 1", "false, 0"})
  void everyOtherLineGoneIsAnotherReaderWhereThereIsOne(boolean other, int told) throws Exception {
    if (other) {
      link.alsoOpenIn("pid 12 (cat)");
    }
    ScriptedLink.Step[] steps = new ScriptedLink.Step[20];
    Arrays.setAll(
        steps, n -> link.after(Duration.ofMillis(20), good("S," + 2 * n + ",1000,-35") + "\n"));
    link.opening(steps);
    run();
    assertThat(changes.stream().filter(text -> text.contains(Impression.SHARED.text())))
        .hasSize(told)
        .allMatch(
            text -> text.endsWith("; another program, pid 12 (cat), has scripted open: close it"));
  }

  @Test
  void bytesThatAreNoLinesPointToTheLineSpeed() throws Exception {
    link.opening(
        link.bytes("\u00fe\u00e0\u0000\n"), link.after(SECOND.multipliedBy(5), "\u00fe\u00e0"));
    run();
    assertThat(changes).containsExactly("scripted: " + Impression.NO_SENSOR.text());
    assertThat(Impression.NO_SENSOR.text()).contains("baud");
  }

  @Test
  void aFloodWithoutLineEndsKeepsLittleAndLetsTimePass() throws Exception {
    String rubbish = "x".repeat(4_096);
    ScriptedLink.Step[] flood = new ScriptedLink.Step[2_000];
    for (int i = 0; i < flood.length; i++) {
      flood[i] = link.after(Duration.ofMillis(1), rubbish);
    }
    flood[0] = link.bytes(SAMPLE + "\n");
    flood[flood.length - 1] = link.bytes("\n" + SAMPLE + "\n");
    link.opening(flood);
    run();
    assertThat(recorder.quiet).isNotEmpty();
    assertThat(recorder.told).hasSize(5);
    assertThat(recorder.told).allMatch(text -> text.length() < 300);
    assertThat(recorder.told.get(3)).endsWith(SAMPLE);
  }

  @Test
  void hostTimeOfALinkThatKnowsItBetterIsItsOwn() throws Exception {
    link.thatEnds().arrivingAt(10_000_000).opening(link.after(SECOND, SAMPLE + "\n"), link.lost());
    run();
    assertThat(recorder.told("10000000 ")).containsExactly("10000000 " + SAMPLE);
  }

  @Test
  void aLinkThatThrowsIsAFaultAndTheSessionIsClosedAllTheSame() throws Exception {
    link.opening(
        buffer -> {
          throw new IllegalStateException("driver");
        });
    assertThat(run().outcome()).isEqualTo(PortOutcome.FAULT);
    assertThat(recorder.told("closed")).containsExactly("closed 0 fault of this program");
    assertThat(link.timesClosed()).isEqualTo(1);
    assertThat(changes)
        .containsExactly("scripted: given up after a fault of this program; the log says more");
  }

  @Test
  void withoutMemoryItIsGivenUpWithAWordAndEnds() throws Exception {
    link.opening(
        buffer -> {
          throw new OutOfMemoryError("test");
        });
    assertThat(run().outcome()).isEqualTo(PortOutcome.FAULT);
    assertThat(changes)
        .containsExactly("scripted: given up after a fault of this program; the log says more");
  }

  @Test
  void aHandlerThatFailsWhereNothingCanBeSaidDoesNotKeepTheReaderWaiting() throws Exception {
    ScriptedLink.Step[] many = new ScriptedLink.Step[200];
    Arrays.fill(many, link.bytes(SAMPLE + "\n"));
    link.thatEnds().opening(many);
    SessionHandler failing =
        new Recorder() {
          @Override
          public void line(long hostMicros, String line) {
            throw new OutOfMemoryError("test");
          }
        };
    LinkWatcher speechless =
        text -> {
          if (text.contains("given up")) {
            throw new OutOfMemoryError("test");
          }
        };
    Limits small = new Limits(BackOff.STANDARD, Duration.ofSeconds(5), 8, true);
    PortSupervisor supervisor =
        new PortSupervisor(link, failing, new Surroundings(link.clock, speechless, small));
    supervisor.start();
    supervisor.awaitEnd();
    assertThat(supervisor.outcome()).isEqualTo(PortOutcome.FAULT);
  }

  @Test
  void statesFollowTheWordsOfTheLink() throws Exception {
    List<PortState> states = new CopyOnWriteArrayList<>();
    PortSupervisor[] self = new PortSupervisor[1];
    link.refusing(Reason.MISSING, "no such port")
        .opening(
            buffer -> {
              states.add(self[0].state());
              return link.bytes(SAMPLE + "\n").read(buffer);
            },
            buffer -> {
              states.add(self[0].state());
              return -1;
            });
    LinkWatcher watcher = text -> states.add(self[0].state());
    self[0] =
        new PortSupervisor(link, recorder, new Surroundings(link.clock, watcher, Limits.STANDARD));
    link.whenDone(self[0]::requestStop);
    self[0].start();
    self[0].awaitEnd();
    states.add(self[0].state());
    assertThat(states)
        .containsExactly(
            PortState.ABSENT,
            PortState.SETTLING,
            PortState.STREAMING,
            PortState.STREAMING,
            PortState.LOST,
            PortState.ENDED);
  }
}
