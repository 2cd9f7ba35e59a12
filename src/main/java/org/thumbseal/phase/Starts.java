package org.thumbseal.phase;

import java.util.Optional;
import org.jspecify.annotations.Nullable;
import org.thumbseal.sample.StreamEvent.Start;

/**
 * The start of a test that was said, until the inlet is blocked. While the vacuum leaves the
 * baseline nobody knows yet whether that is the blocking or the pump that was switched on: a start
 * said then is kept apart until it is known.
 */
final class Starts {
  private @Nullable Start waiting;
  private @Nullable Start doubtful;
  private @Nullable Start followed;

  /** Said with the inlet open. */
  void say(Start start) {
    waiting = start;
  }

  /** Said while the vacuum was climbing a little. */
  void sayInDoubt(Start start) {
    doubtful = start;
  }

  /** The inlet is blocked, and was when the doubtful one was said. */
  void blocked() {
    if (waiting != null) {
      followed = waiting;
    }
    waiting = null;
    doubtful = null;
  }

  /** The climb was no blocking. */
  void notBlocked() {
    Start newest = doubtful != null ? doubtful : waiting;
    waiting = newest != null ? newest : followed;
    doubtful = null;
    followed = null;
  }

  /** Nobody knows what happened meanwhile. */
  void clear() {
    waiting = null;
    doubtful = null;
    followed = null;
  }

  /** The start that the test which ends now follows. */
  Optional<Start> takeFollowed() {
    Optional<Start> start = Optional.ofNullable(followed);
    followed = null;
    return start;
  }

  /** The one that waits, or will if it is not dropped. */
  Optional<Start> newest() {
    return Optional.ofNullable(doubtful).or(() -> Optional.ofNullable(waiting));
  }

  /** Takes the one that has waited too long. */
  Optional<Start> takeOverdue(double now) {
    Optional<Start> overdue =
        Optional.ofNullable(waiting).filter(start -> isOverdue(now - start.seconds()));
    overdue.ifPresent(start -> waiting = null);
    return overdue;
  }

  /** In whole microseconds, so that it does not hang on where device time counts from. */
  private static boolean isOverdue(double waited) {
    return Math.round(waited * 1e6) >= Math.round(PhaseDetector.START_PATIENCE * 1e6);
  }
}
