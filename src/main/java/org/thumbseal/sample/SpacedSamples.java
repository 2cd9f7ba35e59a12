package org.thumbseal.sample;

import java.util.function.Consumer;
import org.jspecify.annotations.Nullable;
import org.thumbseal.sample.StreamEvent.Gap;
import org.thumbseal.sample.StreamEvent.Restart;
import org.thumbseal.sample.StreamEvent.Sample;

/** Tells where samples are missing, though no counter says how many. */
final class SpacedSamples {
  private static final double LONGEST_STEP = 0.25;
  private static final double LONGEST_IN_STEPS = 4;

  private final Consumer<StreamEvent> events;
  private final RecentSteps steps = new RecentSteps();
  private @Nullable Sample last;

  SpacedSamples(Consumer<StreamEvent> events) {
    this.events = events;
  }

  boolean hasBegun() {
    return last != null;
  }

  double now() {
    return last == null ? 0 : last.seconds();
  }

  void accept(Sample sample) {
    Sample before = last;
    if (before != null) {
      double step = sample.seconds() - before.seconds();
      if (step > Math.max(LONGEST_STEP, LONGEST_IN_STEPS * steps.usual())) {
        events.accept(new Gap(before.seconds(), step, 0));
      } else {
        steps.add(step);
      }
    }
    last = sample;
    events.accept(sample);
  }

  void restart(Restart restart) {
    events.accept(restart);
  }
}
