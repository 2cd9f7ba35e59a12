package org.thumbseal.feed;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;

/** A few of the kills that {@link FeedStudy} makes by the hundred. */
@Timeout(180)
class FeedStudyTest {
  private static final int KILLS = 5;
  private static final long SEED = 3;

  @Test
  void killedInMidPublishNothingIsLostAndTheOrderHolds(@TempDir Path folder) throws Exception {
    FeedStudy.Tally tally = FeedStudy.run(folder, KILLS, SEED);
    assertThat(tally.missing()).as("%s", tally).isZero();
    assertThat(tally.inOrder()).as("%s", tally).isTrue();
    assertThat(tally.midway()).as("%s", tally).isPositive();
  }
}
