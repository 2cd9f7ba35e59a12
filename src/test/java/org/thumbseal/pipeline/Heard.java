package org.thumbseal.pipeline;

import java.util.function.Consumer;
import org.thumbseal.capture.Capture;
import org.thumbseal.phase.PhaseEvent;

/** Hears the phases and the tests of a live stream. */
record Heard(Consumer<PhaseEvent.Entered> phases, Consumer<Capture> tests) implements LiveListener {
  @Override
  public void phase(PhaseEvent.Entered phase) {
    phases.accept(phase);
  }

  @Override
  public void test(Capture capture) {
    tests.accept(capture);
  }
}
