package org.thumbseal.phase;

import java.util.Optional;
import java.util.function.Consumer;
import org.jspecify.annotations.Nullable;
import org.thumbseal.phase.PhaseEvent.Entered;
import org.thumbseal.phase.PhaseEvent.NotBlocked;
import org.thumbseal.phase.PhaseEvent.Tested;
import org.thumbseal.sample.StreamEvent;
import org.thumbseal.sample.StreamEvent.Gap;
import org.thumbseal.sample.StreamEvent.Restart;
import org.thumbseal.sample.StreamEvent.Sample;
import org.thumbseal.sample.StreamEvent.Start;

/**
 * Finds occlusion tests in a stream of samples: one pass, bounded memory, the same live and in
 * replay.
 *
 * <p>It works on the reading's own zero, so gauge and absolute sensors look alike to it. A test is
 * seen when the vacuum leaves the band of the baseline and goes on climbing; a step that stops (a
 * pump switched on with the inlet open) becomes the new baseline.
 */
public final class PhaseDetector {
  /** After a start the inlet is to be blocked within this time, s. */
  public static final double START_PATIENCE = 90;

  private static final double PASCALS = 1_000;
  private static final double LONGEST_SILENCE = 3;
  private static final double SETTLE = 0.5;

  /** The fall from the test before is kept, so that a blocking on top of it can be told. */
  private static final double FALL_KEPT = 1.5;

  private final Consumer<PhaseEvent> out;
  private final double tailSeconds;
  private final Slots slots = new Slots(this::step);
  private final History history = new History();
  private final Baseline baseline = new Baseline();
  private final Starts starts = new Starts();
  private @Nullable Climb climb;
  private @Nullable Finished finished;
  private double earliest = Double.NEGATIVE_INFINITY;
  private double now;
  private double level;
  private boolean started;

  private record Finished(Climb climb, Ending ending, double endSeconds, Optional<Start> start) {}

  /**
   * Makes a detector.
   *
   * @param tailSeconds how long to go on after the end of a test before handing it out, s: short
   *     when somebody waits for the answer, longer to see the pump come to rest in a record
   * @param out takes phases and tests
   */
  public PhaseDetector(double tailSeconds, Consumer<PhaseEvent> out) {
    this.tailSeconds = tailSeconds;
    this.out = out;
  }

  /** Takes the next event. */
  public void accept(StreamEvent event) {
    if (event instanceof Restart || isLongSilence(event)) {
      breakOff(event);
    }
    history.add(event);
    now = event.seconds();
    if (event instanceof Sample sample) {
      start(sample);
      slots.accept(sample.seconds(), -sample.pascals() / PASCALS);
    } else if (event instanceof Start said) {
      take(said);
    }
    handOutAfterTail();
    if (climb == null) {
      giveUpOverdueStart();
    }
  }

  /** Says that the stream has ended: an open test ends with it. */
  public void end() {
    slots.flush();
    Climb open = climb;
    if (open != null && open.isTest()) {
      finish(open, open.isDecaying() ? Ending.DECAYED : Ending.CUT_OFF);
    }
    handOut();
    giveUpOverdueStart();
  }

  /** Whether a test is under way, or one is waiting for its tail. */
  public boolean isBusy() {
    return climb != null || finished != null;
  }

  /** Whether there was a sample. */
  public boolean hasBegun() {
    return started;
  }

  /** Whether the inlet is known to be blocked. */
  public boolean isBlocked() {
    return climb != null && climb.isBlocked();
  }

  /** The start that waits for the inlet to be blocked. */
  public Optional<Start> start() {
    return starts.newest();
  }

  /** Device time of the last event, s. */
  public double seconds() {
    return now;
  }

  /** With the inlet blocked a start says nothing. */
  private void take(Start start) {
    if (climb == null) {
      starts.say(start);
    } else if (!climb.isBlocked()) {
      starts.sayInDoubt(start);
    }
  }

  private void giveUpOverdueStart() {
    starts.takeOverdue(now).ifPresent(this::giveUp);
  }

  private void giveUp(Start start) {
    handOut();
    double from = Math.max(earliest, now - History.KEPT_BEFORE);
    out.accept(new NotBlocked(new UnblockedWindow(history.between(from, now), start, now)));
  }

  private void start(Sample sample) {
    if (!started) {
      started = true;
      enter(Phase.IDLE, sample.seconds());
    }
  }

  private static boolean isLongSilence(StreamEvent event) {
    return event instanceof Gap gap && gap.length() > LONGEST_SILENCE;
  }

  private void breakOff(StreamEvent event) {
    slots.flush();
    history.add(event);
    Climb open = climb;
    baseline.clear();
    if (open != null && open.isTest()) {
      now = event.seconds();
      finish(open, Ending.INTERRUPTED);
      baseline.awaitBelow(open.releasedLevel());
    }
    handOut();
    climb = null;
    starts.clear();
    history.clear();
    earliest = Double.NEGATIVE_INFINITY;
  }

  private void step(Slot slot) {
    level = slot.kilopascals();
    Climb open = climb;
    if (open == null) {
      rest(slot);
    } else {
      climb(open, slot);
    }
  }

  private void rest(Slot slot) {
    if (finished == null) {
      history.forgetBefore(slot.seconds() - History.KEPT_BEFORE);
    }
    if (baseline.isAwaited(slot)) {
      return;
    }
    if (baseline.leaves(slot)) {
      climb = new Climb(baseline.level(), baseline.noise(), slot);
    } else {
      baseline.add(slot).ifPresent(phase -> enter(phase, slot.seconds()));
    }
  }

  private void climb(Climb open, Slot slot) {
    switch (open.step(slot)) {
      case NOTHING_YET -> {}
      case WAS_NOTHING -> wasNothing();
      case WAS_A_STEP -> restAt(slot);
      case IS_A_TEST -> begin(open);
      case IS_HOLDING -> enter(Phase.HOLD, slot.seconds());
      case IS_DECAYING -> enter(Phase.DECAY, open.fallSeconds());
      case HAS_DECAYED -> finish(open, Ending.DECAYED);
      case IS_RELEASED -> released(open, slot);
      case IS_OVERLONG -> finish(open, Ending.OVERLONG);
    }
  }

  private void wasNothing() {
    climb = null;
    starts.notBlocked();
  }

  /** A finger on the inlet, or water drawn in, is no test. */
  private void released(Climb open, Slot slot) {
    if (open.isTouch()) {
      wasNothing();
      baseline.restart(slot, Phase.OPEN);
      enter(Phase.OPEN, slot.seconds());
    } else {
      finish(open, Ending.RELEASED);
    }
  }

  private void restAt(Slot slot) {
    wasNothing();
    baseline.restart(slot, Phase.OPEN);
    enter(Phase.OPEN, slot.seconds());
  }

  private void begin(Climb open) {
    handOut();
    starts.blocked();
    enter(Phase.RISE, open.onsetSeconds());
  }

  private void finish(Climb open, Ending ending) {
    starts.blocked();
    finished = new Finished(open, ending, now, starts.takeFollowed());
    climb = null;
    baseline.clear();
    if (ending == Ending.RELEASED) {
      enter(Phase.RELEASE, open.fallSeconds());
    }
  }

  private void handOutAfterTail() {
    Finished test = finished;
    if (test != null && climb == null && now - test.endSeconds() >= tailSeconds) {
      handOut();
    }
  }

  private void handOut() {
    Finished test = finished;
    if (test == null) {
      return;
    }
    finished = null;
    out.accept(new Tested(window(test)));
    earliest = test.endSeconds() - FALL_KEPT;
  }

  private TestWindow window(Finished test) {
    double from = Math.max(earliest, test.climb().onsetSeconds() - History.KEPT_BEFORE);
    Climb next = climb;
    double to = next == null ? now : next.onsetSeconds() - SETTLE;
    return new TestWindow(
        history.between(from, Math.max(to, test.endSeconds())),
        test.climb().onsetSeconds(),
        test.climb().base(),
        test.endSeconds(),
        test.ending(),
        test.start());
  }

  private void enter(Phase phase, double seconds) {
    out.accept(new Entered(phase, seconds, level));
  }
}
