package org.thumbseal.daemon;

import java.nio.file.Path;
import org.thumbseal.phase.PhaseEvent;
import org.thumbseal.record.ResultDocument;

/** Is told what happens at the ports. May be called from several threads at once. */
public interface BenchListener {
  /** A new phase began at a port. */
  void phase(String port, PhaseEvent.Entered phase);

  /** A test was graded, sealed and stored. */
  void result(String port, ResultDocument result, Path file);

  /** A test was graded, but its result is not stored yet: it waits for the disk. */
  void waiting(String port, ResultDocument result);

  /** Something a person should know, in one line that begins with the address of the port. */
  void notice(String text);
}
