package org.thumbseal.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Duration;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.thumbseal.link.HostClock;
import org.thumbseal.link.ManualClock;
import org.thumbseal.record.ResultDocument;

class WarmUpTest {
  @ParameterizedTest
  @ValueSource(ints = {0, 1, 2})
  void eachRoundGradesATestThatWasMeasured(int round) {
    List<ResultDocument> results = WarmUp.results(round);
    assertThat(results).hasSize(1);
    assertThat(results.get(0).measurement()).isPresent();
  }

  @Test
  void restsAfterEachRoundForThreeTimesAsLongAsItTook() {
    ManualClock hands = new ManualClock();
    HostClock clock =
        new HostClock() {
          @Override
          public java.time.Instant wall() {
            return hands.wall();
          }

          /** Every look at it takes a second. */
          @Override
          public long nanos() {
            hands.advance(Duration.ofSeconds(1));
            return hands.nanos();
          }

          @Override
          public void pause(Duration time) {
            hands.pause(time);
          }
        };
    new WarmUp(clock).run(2);
    assertThat(hands.pauses()).containsExactly(Duration.ofSeconds(3), Duration.ofSeconds(3));
  }
}
