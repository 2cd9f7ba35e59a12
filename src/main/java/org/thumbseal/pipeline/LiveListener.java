package org.thumbseal.pipeline;

import org.thumbseal.capture.Capture;
import org.thumbseal.capture.CaptureLine;
import org.thumbseal.phase.PhaseEvent;
import org.thumbseal.sample.StreamEvent;

/**
 * Is told what a live stream sees. Who writes down the lines that are added, and starts anew from
 * {@link LiveStream#capture} after each cut, has at any moment what would be handed out if the test
 * ended then.
 */
public interface LiveListener {
  /** A new phase began. */
  void phase(PhaseEvent.Entered phase);

  /**
   * A test has ended: the capture of it, which is all that was added since the last cut. The cut
   * comes only after this has returned.
   */
  void test(Capture capture);

  /** A reading or what befell the readings, before any phase that it begins is told. */
  default void event(StreamEvent event) {}

  /** A line stands at the end of the capture now. */
  default void added(CaptureLine line) {}

  /** Lines at the beginning are no longer part of the capture. */
  default void cut() {}

  /**
   * Runs work in which a whole capture stands in memory as objects, and {@link #test} is told; who
   * has many streams lets one at a time.
   */
  default void unfold(Runnable work) {
    work.run();
  }
}
