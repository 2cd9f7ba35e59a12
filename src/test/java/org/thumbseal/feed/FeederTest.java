package org.thumbseal.feed;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.thumbseal.archive.Archive;
import org.thumbseal.archive.LedgerReader;
import org.thumbseal.archive.Sealer;
import org.thumbseal.archive.Sequenced;
import org.thumbseal.json.ExampleDocument;
import org.thumbseal.json.Json;
import org.thumbseal.link.ManualClock;
import org.thumbseal.seal.SigningKey;
import org.thumbseal.seal.TlsTrust;
import org.thumbseal.seal.TrustStore;

/** Rounds over a real directory, with the other side in memory. */
class FeederTest {
  @TempDir private Path folder;
  private final Receiver receiver = new Receiver();
  private final ManualClock clock = new ManualClock();
  private final List<String> told = new ArrayList<>();

  private FeedSurroundings around() {
    return new FeedSurroundings(clock, told::add, Duration.ZERO);
  }

  private static FeedTarget target(String address) throws Exception {
    return new FeedTarget(
        FeedAddress.parse(address), "t", Optional.empty(), TlsTrust.of(Optional.empty()), true);
  }

  private Feeder open(SentDocuments from, FeedBegin begin, int most) throws Exception {
    OutboxKeeper keeper =
        OutboxKeeper.open(from.place(), target("mqtts://broker.example"), begin, around());
    return new Feeder(from.place(), around(), keeper, new Feeder.Means(kid -> receiver, most));
  }

  private Feeder open(SentDocuments from) throws Exception {
    return open(from, FeedBegin.GO_ON, Feeder.MOST_KNOWN);
  }

  private void sendAll(SentDocuments from) throws Exception {
    Feeder feeder = open(from);
    assertThat(feeder.round().trouble()).isEmpty();
    feeder.close();
  }

  @Test
  void everythingGoesInOrderAndOnce() throws Exception {
    SentDocuments from = SentDocuments.in(folder, 5);
    sendAll(from);
    from.add(6);
    sendAll(from);
    sendAll(from);
    assertThat(receiver.arrivals()).isEqualTo(SentDocuments.ids(6));
    assertThat(told).isEmpty();
  }

  @Test
  void whatIsStoredMeanwhileGoesInTheSameRound() throws Exception {
    SentDocuments from = SentDocuments.in(folder, 2);
    receiver.answering(
        id -> {
          try {
            if (id.equals(SentDocuments.id(1))) {
              from.add(3);
              from.add(4);
            }
          } catch (Exception e) {
            throw new AssertionError(e);
          }
          return new Answer.Accepted();
        });
    sendAll(from);
    assertThat(receiver.arrivals()).isEqualTo(SentDocuments.ids(4));
  }

  @Test
  void aFewAtATimeAreAsGoodAsAll() throws Exception {
    SentDocuments from = SentDocuments.in(folder, 11);
    Feeder feeder = open(from, FeedBegin.GO_ON, 4);
    assertThat(feeder.round()).isEqualTo(new Feeder.Round(11, ""));
    assertThat(receiver.arrivals()).isEqualTo(SentDocuments.ids(11));
  }

  @Test
  void inTroubleTheOrderHoldsAndNothingIsLost() throws Exception {
    SentDocuments from = SentDocuments.in(folder, 4);
    Feeder feeder = open(from);
    receiver.answering(
        id -> id.equals(SentDocuments.id(3)) ? receiver.losingAnswer(id) : new Answer.Accepted());
    assertThat(feeder.round()).isEqualTo(new Feeder.Round(2, "the answer is lost"));
    assertThat(feeder.state())
        .isEqualTo(new FeedState(2, Optional.of(clock.wall()), "the answer is lost", 0));
    Instant since = clock.wall();
    clock.advance(Duration.ofDays(20));
    assertThat(feeder.round().sent()).isZero();
    assertThat(feeder.state().since()).contains(since);
    assertThat(Feeder.state(from.place(), target("mqtts://broker.example")))
        .isEqualTo(feeder.state());
    receiver.answering(id -> new Answer.Accepted());
    assertThat(feeder.round()).isEqualTo(new Feeder.Round(2, ""));
    assertThat(feeder.state()).isEqualTo(FeedState.UNKNOWN);
    assertThat(receiver.firstArrivals()).isEqualTo(SentDocuments.ids(4));
    assertThat(receiver.arrivals()).hasSize(6);
  }

  @Test
  void oneThatIsRefusedDoesNotStandInTheWay() throws Exception {
    SentDocuments from = SentDocuments.in(folder, 3);
    receiver.answering(
        id ->
            id.equals(SentDocuments.id(2))
                ? new Answer.Refused("the answer is HTTP 413")
                : new Answer.Accepted());
    Feeder feeder = open(from);
    assertThat(feeder.round()).isEqualTo(new Feeder.Round(2, ""));
    assertThat(feeder.state()).isEqualTo(new FeedState(0, Optional.empty(), "", 1));
    feeder.close();
    assertThat(told).hasSize(1);
    assertThat(told.get(0))
        .endsWith(".json: is not taken: the answer is HTTP 413; put aside, the others go on");
    sendAll(from);
    assertThat(receiver.arrivals()).hasSize(2);
    receiver.answering(id -> new Answer.Accepted());
    Feeder again = open(from, FeedBegin.REFUSED_AGAIN, Feeder.MOST_KNOWN);
    assertThat(again.round().sent()).isEqualTo(1);
    assertThat(again.state()).isEqualTo(FeedState.UNKNOWN);
    assertThat(receiver.arrivals().get(2)).isEqualTo(SentDocuments.id(2));
  }

  /** A receiver that fails over it, and never says that it is the document. */
  @Test
  void oneThatAlwaysFailsDoesNotStandInTheWayForEver() throws Exception {
    SentDocuments from = SentDocuments.in(folder, 4);
    receiver.answering(
        id ->
            id.equals(SentDocuments.id(2))
                ? new Answer.Trouble("the answer is HTTP 500")
                : new Answer.Accepted());
    Feeder feeder = open(from);
    for (int i = 1; i < Feeder.SUSPICIOUS; i++) {
      assertThat(feeder.round().trouble()).isEqualTo("the answer is HTTP 500");
    }
    assertThat(receiver.arrivals()).isEqualTo(SentDocuments.ids(1));
    assertThat(feeder.round()).isEqualTo(new Feeder.Round(2, ""));
    assertThat(receiver.arrivals())
        .containsExactly(SentDocuments.id(1), SentDocuments.id(3), SentDocuments.id(4));
    assertThat(feeder.state().refused()).isEqualTo(1);
  }

  /** Two of them, for one who comes once. */
  @Test
  void whoComesOnceTriesAsOften() throws Exception {
    SentDocuments from = SentDocuments.in(folder, 5);
    Set<String> bad = Set.of(SentDocuments.id(2), SentDocuments.id(4));
    receiver.answering(
        id ->
            bad.contains(id)
                ? new Answer.Trouble("the answer is HTTP 500")
                : new Answer.Accepted());
    Feeder feeder = open(from);
    assertThat(feeder.stubbornRound(RetryPlan.STANDARD)).isEqualTo(new Feeder.Round(3, ""));
    assertThat(receiver.arrivals())
        .containsExactly(SentDocuments.id(1), SentDocuments.id(3), SentDocuments.id(5));
    assertThat(feeder.state().refused()).isEqualTo(2);
  }

  @Test
  void whoComesOnceDoesNotTryForEver() throws Exception {
    SentDocuments from = SentDocuments.in(folder, 3);
    receiver.answering(id -> new Answer.Trouble("the answer is HTTP 500"));
    Instant begun = clock.wall();
    Feeder feeder = open(from);
    assertThat(feeder.stubbornRound(RetryPlan.STANDARD))
        .isEqualTo(new Feeder.Round(0, "the answer is HTTP 500"));
    assertThat(feeder.state().waiting()).isEqualTo(3);
    // Half of 1, 2, 4 and 8 s.
    assertThat(Duration.between(begun, clock.wall())).isEqualTo(Duration.ofMillis(7500));
  }

  @Test
  void whereAllFailNoneIsPutAside() throws Exception {
    SentDocuments from = SentDocuments.in(folder, 4);
    receiver.answering(id -> new Answer.Trouble("the answer is HTTP 500"));
    Feeder feeder = open(from);
    for (int i = 0; i < 4 * Feeder.SUSPICIOUS; i++) {
      assertThat(feeder.round().sent()).isZero();
    }
    assertThat(feeder.state().waiting()).isEqualTo(4);
    receiver.answering(id -> new Answer.Accepted());
    assertThat(feeder.round().sent()).isEqualTo(4);
    assertThat(receiver.arrivals()).isEqualTo(SentDocuments.ids(4));
  }

  @Test
  void whereEverythingIsRefusedTheRestWaits() throws Exception {
    SentDocuments from = SentDocuments.in(folder, Feeder.MOST_REFUSED + 5);
    receiver.answering(id -> new Answer.Refused("the answer is HTTP 400"));
    Feeder feeder = open(from);
    assertThat(feeder.round().trouble()).startsWith("100 documents were refused");
    assertThat(feeder.state().waiting()).isEqualTo(5);
  }

  @Test
  void whatIsNotThereIsToldAndSentWhenItIsBack() throws Exception {
    SentDocuments from = SentDocuments.in(folder.resolve("r"), 1);
    Path second = from.add(2);
    from.add(3);
    Path last = from.add(4);
    Path away = Files.createDirectory(folder.resolve("away"));
    Files.move(second, away.resolve("second"));
    Files.move(last, away.resolve("last"));
    sendAll(from);
    assertThat(receiver.arrivals()).containsExactly(SentDocuments.id(1), SentDocuments.id(3));
    assertThat(told).hasSize(2);
    assertThat(told.get(0)).contains("document 2 is not there");
    assertThat(told.get(1)).contains("document 4 is not there");
    Files.move(away.resolve("second"), second);
    sendAll(from);
    assertThat(receiver.arrivals()).hasSize(3).endsWith(SentDocuments.id(2));
    Files.move(away.resolve("last"), last);
    sendAll(from);
    assertThat(receiver.arrivals()).hasSize(4).endsWith(SentDocuments.id(4));
  }

  /** Those that wait are the last, and the thousands before them are not opened. */
  @Test
  void aFewThatWaitAreFoundFromTheEnd() throws Exception {
    SentDocuments from = SentDocuments.in(folder.resolve("r"), 30);
    sendAll(from);
    from.add(31);
    Path last = from.add(32);
    int[] opened = {0};
    var reader = new LedgerReader(from.path());
    assertThat(reader.findLatest((kid, n) -> n > 30, 2, () -> opened[0]++))
        .extracting(Sequenced::sequence)
        .containsExactly(31L, 32L);
    assertThat(opened[0]).isEqualTo(2);
    String sound = Files.readString(last);
    Files.writeString(last.resolveSibling("z.json"), sound.replace("\"pass\"", "\"fail\""));
    assertThat(reader.findLatest((kid, n) -> n > 30, 2, () -> {}))
        .extracting(Sequenced::file)
        .contains(last);
    sendAll(from);
    assertThat(receiver.arrivals()).isEqualTo(SentDocuments.ids(32));
  }

  @Test
  void aBrokenSealIsNotSentAndACopyDoesNotTakeItsPlace() throws Exception {
    SentDocuments from = SentDocuments.in(folder, 1);
    Path second = from.add(2);
    String sound = Files.readString(second);
    // Sorts before and after the sound one.
    Files.writeString(second.resolveSibling("0.json"), sound.replace("\"pass\"", "\"fail\""));
    Files.writeString(second.resolveSibling("z.json"), sound.replace("\"pass\"", "\"fail\""));
    Path third = from.add(3);
    Files.writeString(third, Files.readString(third).replace("\"pass\"", "\"fail\""));
    from.add(4);
    sendAll(from);
    assertThat(receiver.arrivals())
        .containsExactly(SentDocuments.id(1), SentDocuments.id(2), SentDocuments.id(4));
    assertThat(told).hasSize(1);
    assertThat(told.get(0)).contains("its seal is broken");
  }

  @Test
  void whatTheHeadDoesNotNameIsNoPartOfTheLedger() throws Exception {
    SentDocuments from = SentDocuments.in(folder.resolve("r"), 2);
    SentDocuments stranger = SentDocuments.in(folder.resolve("s"), 0);
    Path foreign = stranger.add(9);
    Files.copy(foreign, from.path().resolve("2026").resolve(foreign.getFileName()));
    sendAll(from);
    assertThat(receiver.arrivals()).isEqualTo(SentDocuments.ids(2));
  }

  @Test
  void theNextKeyGoesOn() throws Exception {
    SentDocuments from = SentDocuments.in(folder, 0);
    from.add(1);
    sendAll(from);
    var later = SigningKey.generate();
    var sealer = new Sealer(later, TrustStore.of(from.key().verifyingKey()));
    try (var archive = Archive.open(folder, sealer)) {
      archive.store(ExampleDocument.unsealed(2), new byte[] {'#'});
      archive.store(ExampleDocument.unsealed(3), new byte[] {'#'});
    }
    sendAll(from);
    assertThat(receiver.arrivals()).isEqualTo(SentDocuments.ids(3));
  }

  @Test
  void withoutItsRecordEverythingGoesAgainInOrder() throws Exception {
    SentDocuments from = SentDocuments.in(folder, 3);
    sendAll(from);
    Path record = record(from);
    for (String spoilt : List.of("", "{}", "{\"schema\":\"thumbseal-feed/1\",\"chains\":[{}]}")) {
      Files.writeString(record, spoilt);
      sendAll(from);
    }
    Files.delete(record);
    sendAll(from);
    assertThat(receiver.firstArrivals()).isEqualTo(SentDocuments.ids(3));
    assertThat(receiver.arrivals()).hasSize(15);
    assertThat(told).hasSize(3).allMatch(t -> t.endsWith("; everything is sent again"));
    Feeder all = open(from, FeedBegin.ALL_AGAIN, Feeder.MOST_KNOWN);
    assertThat(all.round().sent()).isEqualTo(3);
  }

  private static Path record(SentDocuments from) throws Exception {
    return new OutboxRecord(from.place().outbox(), target("mqtts://broker.example")).file();
  }

  /** Written at the first acknowledgement, and then once a second: of five, four. */
  @Test
  void aKillCostsASecondOfDuplicates() throws Exception {
    SentDocuments from = SentDocuments.in(folder, 10);
    List<Long> waiting = new ArrayList<>();
    receiver.answering(
        id -> {
          try {
            waiting.add(Feeder.state(from.place(), target("mqtts://broker.example")).waiting());
          } catch (Exception e) {
            throw new AssertionError(e);
          }
          clock.advance(Duration.ofMillis(400));
          return new Answer.Accepted();
        });
    sendAll(from);
    assertThat(waiting).containsExactly(10L, 9L, 9L, 9L, 6L, 6L, 6L, 3L, 3L, 3L);
  }

  @Test
  void twoDoNotSendTheSame() throws Exception {
    SentDocuments from = SentDocuments.in(folder, 1);
    Feeder first = open(from);
    assertThatThrownBy(() -> open(from))
        .isInstanceOf(FeedException.class)
        .hasMessageContaining("another thumbseal (process ");
    first.close();
    sendAll(from);
    assertThat(receiver.arrivals()).hasSize(1);
  }

  @Test
  void eachTargetHasItsOwnRecord() throws Exception {
    SentDocuments from = SentDocuments.in(folder, 1);
    sendAll(from);
    assertThat(Feeder.state(from.place(), target("mqtts://broker.example")).waiting()).isZero();
    assertThat(Feeder.state(from.place(), target("https://logbook.example/in")).waiting())
        .isEqualTo(1);
  }

  @Test
  void aDirectoryThatVanishesIsWaitedFor() throws Exception {
    SentDocuments from = SentDocuments.in(folder.resolve("r"), 2);
    Feeder feeder = open(from);
    assertThat(feeder.round().sent()).isEqualTo(2);
    Files.move(from.path(), folder.resolve("away"));
    assertThat(feeder.round().trouble()).contains("has vanished; put it back");
    Files.move(folder.resolve("away"), from.path());
    from.add(3);
    assertThat(feeder.round()).isEqualTo(new Feeder.Round(1, ""));
  }

  @Test
  void everyKindOfDocumentGoes() throws Exception {
    SentDocuments from = SentDocuments.in(folder, 1);
    var inspection =
        Json.object().put("schema", "thumbseal-inspection/1").put("kind", "inspection");
    inspection.put("id", SentDocuments.id(77)).put("recordedAt", "2026-05-01T10:00:00.000Z");
    inspection.putObject("asset").put("id", "SP-014");
    try (var archive = Archive.open(folder, from.key())) {
      archive.store(inspection);
    }
    sendAll(from);
    assertThat(receiver.arrivals()).containsExactly(SentDocuments.id(1), SentDocuments.id(77));
  }

  @Test
  void nothingOfTheOutboxIsTakenForADocument() throws Exception {
    SentDocuments from = SentDocuments.in(folder, 1);
    sendAll(from);
    from.add(2);
    sendAll(from);
    assertThat(receiver.arrivals()).isEqualTo(SentDocuments.ids(2));
    try (var files = Files.list(from.place().outbox())) {
      assertThat(files.map(f -> f.getFileName().toString()))
          .allMatch(name -> name.matches("[0-9a-f]{16}\\.json(\\.lock)?"));
    } catch (IOException e) {
      throw new AssertionError(e);
    }
  }
}
