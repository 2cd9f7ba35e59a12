package org.thumbseal.feed;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.condition.EnabledOnOs;
import org.junit.jupiter.api.condition.OS;
import org.junit.jupiter.api.io.TempDir;
import org.thumbseal.cli.SmallDisk;
import org.thumbseal.link.ManualClock;
import org.thumbseal.seal.TlsTrust;

/** What becomes of an outbox whose disk, of 64 KiB, is full. */
@EnabledOnOs(value = OS.LINUX, disabledReason = "skipped: disks are mounted as on Linux")
class FullDiskTest {
  @TempDir private Path folder;
  private final Receiver receiver = new Receiver();
  private final ManualClock clock = new ManualClock();
  private final List<String> told = new ArrayList<>();
  private Path disk;
  private Optional<SmallDisk> mounted = Optional.empty();

  @BeforeEach
  void mount() throws IOException {
    disk = folder.resolve("disk");
    mounted = Optional.of(SmallDisk.at(disk, 64));
  }

  @AfterEach
  void unmount() {
    mounted.ifPresent(SmallDisk::close);
  }

  private Feeder open(SentDocuments from) throws Exception {
    FeedPlace place = new FeedPlace(from.path(), disk.resolve("outbox"));
    FeedSurroundings around = new FeedSurroundings(clock, told::add, Duration.ZERO);
    var target =
        new FeedTarget(
            FeedAddress.parse("mqtts://broker.example"),
            "t",
            Optional.empty(),
            TlsTrust.of(Optional.empty()),
            true);
    OutboxKeeper keeper = OutboxKeeper.open(place, target, FeedBegin.GO_ON, around);
    return new Feeder(place, around, keeper, new Feeder.Means(kid -> receiver, Feeder.MOST_KNOWN));
  }

  @Test
  void sendingGoesOnAndWhatIsNotKeptGoesAgain() throws Exception {
    SentDocuments from = SentDocuments.in(folder.resolve("r"), 3);
    Feeder first = open(from);
    assertThat(first.round().sent()).isEqualTo(3);
    mounted.orElseThrow().fill();
    for (int number = 4; number <= 8; number++) {
      from.add(number);
      clock.advance(Duration.ofSeconds(2));
      assertThat(first.round()).isEqualTo(new Feeder.Round(1, ""));
    }
    assertThat(told).hasSize(1);
    assertThat(told.get(0))
        .contains(
            ".json: cannot be written: No space left on device; sending goes on, and after a"
                + " restart some are sent again");
    first.close();
    Feeder second = open(from);
    assertThat(second.round().sent()).isEqualTo(5);
    mounted.orElseThrow().free();
    from.add(9);
    clock.advance(Duration.ofSeconds(2));
    assertThat(second.round().sent()).isEqualTo(1);
    assertThat(told).hasSize(3);
    assertThat(told.get(2)).endsWith(".json: can be written again");
    second.close();
    Feeder third = open(from);
    assertThat(third.round().sent()).isZero();
    assertThat(receiver.firstArrivals()).isEqualTo(SentDocuments.ids(9));
    assertThat(receiver.arrivals()).hasSize(14);
  }

  /** With nothing kept at all, not even a folder. */
  @Test
  void onADiskThatWasFullBeforeNothingIsLostEither() throws Exception {
    SentDocuments from = SentDocuments.in(folder.resolve("r"), 4);
    Files.createDirectory(disk.resolve("outbox"));
    mounted.orElseThrow().fill();
    for (int start = 0; start < 3; start++) {
      Feeder feeder = open(from);
      assertThat(feeder.round().sent()).isEqualTo(4);
      feeder.close();
    }
    assertThat(receiver.firstArrivals()).isEqualTo(SentDocuments.ids(4));
    assertThat(told).hasSize(3);
  }
}
