package org.thumbseal.history;

import java.util.Optional;
import org.thumbseal.trend.Crossing;
import org.thumbseal.trend.Limit;
import org.thumbseal.trend.Step;
import org.thumbseal.trend.Trend;

/**
 * One quantity over the tests.
 *
 * @param kind which
 * @param limit as it was applied in the last test; absent where there is none
 * @param trend what the values say
 * @param crossing when the limit is reached, where that can be said
 */
public record Course(Kind kind, Optional<Limit> limit, Trend trend, Optional<Crossing> crossing) {
  /** Whether the trend goes to the bad side. */
  public boolean worsens() {
    return trend.line().filter(line -> kind.worsens(line.slope().value())).isPresent();
  }

  /** The last jump, if it was to the bad and nothing was reported that explains it. */
  public Optional<Step> unexplained() {
    return trend.steps().stream()
        .reduce((earlier, later) -> later)
        .filter(step -> !step.known() && kind.worsens(step.size()));
  }
}
