package org.thumbseal.feed;

import java.time.Instant;
import java.time.temporal.ChronoUnit;
import java.util.Optional;

/**
 * How an outbox stands.
 *
 * @param waiting how many documents are still to be acknowledged
 * @param since from when on there was always one that waited; absent where none does
 * @param trouble why they do not go, in half a sentence; empty where nothing is wrong
 * @param refused how many the other side will not take
 */
public record FeedState(long waiting, Optional<Instant> since, String trouble, long refused) {
  /** Nothing was looked at yet. */
  public static final FeedState UNKNOWN = new FeedState(0, Optional.empty(), "", 0);

  /** For a line about health; empty where there is nothing to tell. */
  public String line() {
    if (waiting == 0 && refused == 0 && trouble.isEmpty()) {
      return "";
    }
    String from = since.map(s -> " since " + s.truncatedTo(ChronoUnit.SECONDS)).orElse("");
    return "feed: "
        + waiting
        + " waiting"
        + from
        + (refused == 0 ? "" : ", " + refused + " refused")
        + (trouble.isEmpty() ? "" : ": " + trouble);
  }
}
