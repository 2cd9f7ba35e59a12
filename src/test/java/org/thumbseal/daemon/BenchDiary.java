package org.thumbseal.daemon;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.thumbseal.phase.Phase;
import org.thumbseal.phase.PhaseEvent;
import org.thumbseal.record.ResultDocument;

/** Writes down what a bench is told. */
class BenchDiary implements BenchListener {
  final List<Phase> phases = new ArrayList<>();
  final List<ResultDocument> results = new ArrayList<>();
  final List<ResultDocument> waiting = new ArrayList<>();
  final List<Path> files = new ArrayList<>();
  final List<String> notices = new ArrayList<>();

  private boolean testing;

  @Override
  public synchronized void phase(String port, PhaseEvent.Entered phase) {
    testing |= phase.phase() == Phase.RISE;
    phases.add(phase.phase());
  }

  @Override
  public synchronized void result(String port, ResultDocument result, Path file) {
    testing = false;
    results.add(result);
    files.add(file);
  }

  @Override
  public synchronized void waiting(String port, ResultDocument result) {
    waiting.add(result);
  }

  @Override
  public synchronized void notice(String text) {
    notices.add(text);
  }

  /** Whether a rise was told and no result since. */
  synchronized boolean isTesting() {
    return testing;
  }

  synchronized List<String> ids() {
    return results.stream().map(ResultDocument::id).toList();
  }
}
