package org.thumbseal.cli;

import java.util.Optional;
import org.thumbseal.daemon.BenchListener;
import org.thumbseal.daemon.PortDesk;
import org.thumbseal.daemon.StartRefusal;
import org.thumbseal.daemon.Started;
import org.thumbseal.visit.StartedBy;
import org.thumbseal.visit.Visit;

/** Stand-in until the recorder has a desk of its own: keeps what was said. */
final class PlainDesk implements PortDesk {
  private final String port;
  private final BenchListener listener;
  private Visit said = Visit.NONE;

  PlainDesk(String port, BenchListener listener) {
    this.port = port;
    this.listener = listener;
  }

  @Override
  public String port() {
    return port;
  }

  @Override
  public synchronized void visit(Visit visit) {
    said = visit;
    listener.visit(port, said, Optional.empty());
  }

  @Override
  public synchronized Optional<StartRefusal> start(StartedBy by, Optional<Visit> visit) {
    said = visit.orElse(said);
    if (said.forbidsMains()) {
      listener.visit(port, said, Optional.empty());
      return Optional.of(StartRefusal.MAINS_FORBIDDEN);
    }
    listener.visit(port, said, Optional.of(new Started(by, 90)));
    return Optional.empty();
  }
}
