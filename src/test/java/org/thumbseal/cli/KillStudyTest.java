package org.thumbseal.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.condition.EnabledOnOs;
import org.junit.jupiter.api.condition.OS;
import org.junit.jupiter.api.io.TempDir;

/** A few kills of what {@link KillStudy} makes by the hundred; two lanes, one over a terminal. */
@Timeout(300)
@EnabledOnOs(value = OS.LINUX, disabledReason = "skipped: processes are killed as on Linux")
class KillStudyTest {
  private static final int KILLS = 3;
  private static final int LANES = 2;
  private static final long SEED = 4;

  @Test
  void nothingThatHadEndedIsLost(@TempDir Path folder) throws Exception {
    KillTally tally = KillStudy.run(folder, KILLS, LANES, SEED);
    System.out.println(tally);
    assertThat(tally.kills()).isEqualTo(KILLS * LANES);
    assertThat(tally.worstMissing()).isLessThan(1);
  }
}
