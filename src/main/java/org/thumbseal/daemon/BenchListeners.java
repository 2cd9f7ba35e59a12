package org.thumbseal.daemon;

import java.nio.file.Path;
import java.time.Instant;
import java.util.List;
import java.util.Optional;
import java.util.function.Consumer;
import org.thumbseal.phase.PhaseEvent;
import org.thumbseal.pipeline.KnownPumps;
import org.thumbseal.pipeline.LiveStream;
import org.thumbseal.record.ResultDocument;
import org.thumbseal.sample.StreamEvent;
import org.thumbseal.visit.Visit;
import org.tinylog.Logger;

/**
 * Tells several listeners, in order. A fault of one of them stops neither the others nor a port.
 */
public final class BenchListeners implements BenchListener {
  private final List<BenchListener> all;

  /** Tells these. */
  public BenchListeners(List<BenchListener> all) {
    this.all = List.copyOf(all);
  }

  private void tell(Consumer<BenchListener> news) {
    for (BenchListener listener : all) {
      try {
        news.accept(listener);
      } catch (RuntimeException e) {
        Logger.error(e, "news of the bench was not taken");
      }
    }
  }

  @Override
  public void phase(String port, PhaseEvent.Entered phase) {
    tell(l -> l.phase(port, phase));
  }

  @Override
  public void graded(String port, ResultDocument result) {
    tell(l -> l.graded(port, result));
  }

  @Override
  public void result(String port, ResultDocument result, Path file) {
    tell(l -> l.result(port, result, file));
  }

  @Override
  public void waiting(String port, ResultDocument result) {
    tell(l -> l.waiting(port, result));
  }

  @Override
  public void visit(String port, Visit visit, Optional<Started> started) {
    tell(l -> l.visit(port, visit, started));
  }

  @Override
  public void pumps(String port, KnownPumps pumps) {
    tell(l -> l.pumps(port, pumps));
  }

  @Override
  public void notice(String text) {
    tell(l -> l.notice(text));
  }

  @Override
  public void link(String port, PortState state) {
    tell(l -> l.link(port, state));
  }

  @Override
  public void linkNotice(String text) {
    tell(l -> l.linkNotice(text));
  }

  @Override
  public void opened(String port, Instant wallClock, LiveStream stream) {
    tell(l -> l.opened(port, wallClock, stream));
  }

  @Override
  public void reading(String port, StreamEvent event) {
    tell(l -> l.reading(port, event));
  }

  @Override
  public void line(String port, long hostMicros) {
    tell(l -> l.line(port, hostMicros));
  }

  @Override
  public void dropped(String port, long lines) {
    tell(l -> l.dropped(port, lines));
  }

  @Override
  public void closed(String port) {
    tell(l -> l.closed(port));
  }
}
