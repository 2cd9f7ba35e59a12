package org.thumbseal.daemon;

import java.nio.file.Path;
import java.util.Optional;
import org.thumbseal.phase.PhaseEvent;
import org.thumbseal.record.ResultDocument;
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

  /** Something a person should know, in one line that begins with the address of the port. */
  void notice(String text);
}
