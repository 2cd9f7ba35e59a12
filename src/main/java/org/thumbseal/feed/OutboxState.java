package org.thumbseal.feed;

import java.time.Instant;
import java.util.Optional;

/**
 * What is kept of an outbox.
 *
 * @param progress how far the other side has acknowledged
 * @param since from when on there was always something that waited; absent while nothing does
 * @param trouble why it does not go, in half a sentence; empty while it goes
 */
record OutboxState(Progress progress, Optional<Instant> since, String trouble) {
  static final OutboxState NEW = new OutboxState(Progress.NONE, Optional.empty(), "");

  OutboxState with(Progress moved) {
    return new OutboxState(moved, since, trouble);
  }

  OutboxState waitingSince(Instant now) {
    return since.isPresent() ? this : new OutboxState(progress, Optional.of(now), trouble);
  }

  OutboxState troubledBy(String why) {
    return new OutboxState(progress, since, why);
  }

  OutboxState empty() {
    return new OutboxState(progress, Optional.empty(), "");
  }
}
