package org.thumbseal.cli;

import java.nio.file.Path;
import org.thumbseal.daemon.BenchListener;
import org.thumbseal.phase.PhaseEvent;
import org.thumbseal.record.ResultDocument;

/**
 * Passes on that a result was stored, and nothing else.
 *
 * @param then must not wait: it is called between two tests
 */
record WhenStored(Runnable then) implements BenchListener {
  @Override
  public void phase(String port, PhaseEvent.Entered phase) {}

  @Override
  public void result(String port, ResultDocument result, Path file) {
    then.run();
  }

  @Override
  public void waiting(String port, ResultDocument result) {}

  @Override
  public void notice(String text) {}
}
