package org.thumbseal.page;

import java.util.List;
import java.util.Optional;
import java.util.concurrent.CopyOnWriteArrayList;
import org.thumbseal.daemon.BenchListener;
import org.thumbseal.daemon.PortDesk;
import org.thumbseal.daemon.StartRefusal;
import org.thumbseal.daemon.Started;
import org.thumbseal.visit.StartedBy;
import org.thumbseal.visit.Visit;

/** A desk that writes down what is said to it, and refuses a start when it is told to. */
final class SpokenDesk implements PortDesk {
  private final String port;
  private final BenchListener listener;
  final List<StartedBy> starts = new CopyOnWriteArrayList<>();
  volatile Visit visit = Visit.NONE;
  volatile Optional<String> sought = Optional.empty();
  volatile Optional<StartRefusal> refusal = Optional.empty();

  SpokenDesk(String port, BenchListener listener) {
    this.port = port;
    this.listener = listener;
  }

  @Override
  public String port() {
    return port;
  }

  @Override
  public void visit(Visit said) {
    visit = said;
    listener.visit(port, said, Optional.empty());
  }

  @Override
  public Optional<StartRefusal> start(StartedBy by, Optional<String> asset) {
    asset.ifPresent(id -> visit(visit.withAsset(id)));
    if (refusal.isEmpty()) {
      starts.add(by);
      listener.visit(port, visit, Optional.of(new Started(by, 90)));
    }
    return refusal;
  }

  @Override
  public Optional<StartRefusal> seek(Optional<String> asset) {
    if (refusal.isEmpty()) {
      sought = asset;
      visit(Visit.NONE);
    }
    return refusal;
  }
}
