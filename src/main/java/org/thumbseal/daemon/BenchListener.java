package org.thumbseal.daemon;

import java.nio.file.Path;
import java.time.Instant;
import java.util.Optional;
import org.thumbseal.phase.PhaseEvent;
import org.thumbseal.pipeline.KnownPumps;
import org.thumbseal.pipeline.LiveStream;
import org.thumbseal.record.ResultDocument;
import org.thumbseal.sample.StreamEvent;
import org.thumbseal.visit.Visit;

/** Is told what happens at the ports. May be called from several threads at once. */
public interface BenchListener {
  /** A new phase began at a port. */
  void phase(String port, PhaseEvent.Entered phase);

  /** A test was graded, sealed and stored. */
  void result(String port, ResultDocument result, Path file);

  /** A test was graded, but its result is not stored yet: it waits for the disk. */
  void waiting(String port, ResultDocument result);

  /**
   * What people say about the pump at a port has changed, or whether a start waits for its
   * blocking.
   *
   * @param visit all that holds now
   * @param started the start that waits; absent where there is none, or none any more
   */
  default void visit(String port, Visit visit, Optional<Started> started) {}

  /** More, or something else, is known of pumps: the next test at a port is graded by it. */
  default void pumps(String port, KnownPumps pumps) {}

  /** Something a person should know, in one line that begins with the address of the port. */
  void notice(String text);

  /** A test was graded; it is not sealed and not stored yet. */
  default void graded(String port, ResultDocument result) {}

  /** A port stands somewhere else now. */
  default void link(String port, PortState state) {}

  /** What befell the link of a port, in one line that begins with its address. */
  default void linkNotice(String text) {
    notice(text);
  }

  /**
   * A session begins. Everything about its lines is told by one thread, which alone may ask the
   * stream, and only until the session is closed.
   *
   * @param wallClock the moment at which host time is zero
   */
  default void opened(String port, Instant wallClock, LiveStream stream) {}

  /** A reading came, or something befell the readings. */
  default void reading(String port, StreamEvent event) {}

  /**
   * A line was taken, good or not, and all that follows from it was told.
   *
   * @param hostMicros when it came
   */
  default void line(String port, long hostMicros) {}

  /** Lines came too fast and are gone. */
  default void dropped(String port, long lines) {}

  /** The session is closed. */
  default void closed(String port) {}
}
