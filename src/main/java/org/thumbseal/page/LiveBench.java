package org.thumbseal.page;

import java.nio.file.Path;
import java.time.Instant;
import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Collection;
import java.util.Deque;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Consumer;
import org.jspecify.annotations.Nullable;
import org.thumbseal.daemon.BenchListener;
import org.thumbseal.daemon.BenchListeners;
import org.thumbseal.daemon.PortState;
import org.thumbseal.daemon.Started;
import org.thumbseal.link.HostClock;
import org.thumbseal.phase.PhaseEvent;
import org.thumbseal.pipeline.GradingSettings;
import org.thumbseal.pipeline.KnownPumps;
import org.thumbseal.pipeline.LiveStream;
import org.thumbseal.record.ResultDocument;
import org.thumbseal.sample.StreamEvent;
import org.thumbseal.visit.Visit;
import tools.jackson.databind.node.ObjectNode;

/**
 * What happens at the ports, kept for the pages that look at it. Takes what the daemon tells, never
 * waits for a page, and keeps two minutes of curve at the most.
 */
public final class LiveBench implements BenchListener {
  private static final int NOTICES = 20;

  private final Map<String, LivePort> ports = new LinkedHashMap<>();
  private final Deque<Notice> notices = new ArrayDeque<>();
  private final List<Runnable> wakers = new ArrayList<>();
  private final HostClock clock;
  private final GradingSettings settings;
  private volatile BenchListener searches = new BenchListeners(List.of());
  private long noticed;
  private volatile KnownPumps pumps;

  /**
   * Begins with nothing connected.
   *
   * @param names addresses of the ports
   * @param settings as the tests are graded
   * @param clock dates notices
   */
  public LiveBench(List<String> names, GradingSettings settings, HostClock clock) {
    this.clock = clock;
    this.settings = settings;
    this.pumps = settings.pumps();
    names.forEach(name -> ports.put(name, new LivePort(name, settings)));
  }

  /**
   * Something a person should know.
   *
   * @param number counts from 1
   * @param at wall clock
   * @param text one line
   */
  record Notice(long number, Instant at, String text) {}

  /** Is called, by any thread, when there is news that should not wait. */
  void onNews(Runnable waker) {
    synchronized (wakers) {
      wakers.add(waker);
    }
  }

  Collection<LivePort> ports() {
    return ports.values();
  }

  /** Tells the searches too what they need of what happens. */
  void tellSearches(BenchListener listener) {
    searches = listener;
  }

  /** What the pages show of the search at a port; empty where there is none. */
  void search(String port, Optional<ObjectNode> tree) {
    wakeAfter(port, live -> live.search(tree));
  }

  /** Volume of the jar of a pump, L, where anybody said it. */
  Optional<Double> jarLitres(String asset) {
    return pumps
        .of(asset)
        .flatMap(pump -> pump.equipment().jarLitres())
        .or(settings.pump()::jarLitres)
        .or(settings.criteria().equipment()::jarLitres);
  }

  /** The last notices, oldest first. */
  synchronized List<Notice> notices() {
    return List.copyOf(notices);
  }

  /** What is known of pumps. */
  KnownPumps pumps() {
    return pumps;
  }

  private void at(String port, Consumer<LivePort> news) {
    @Nullable LivePort live = ports.get(port);
    if (live != null) {
      news.accept(live);
    }
  }

  private void wakeAfter(String port, Consumer<LivePort> news) {
    at(port, news);
    wake();
  }

  private void wake() {
    synchronized (wakers) {
      wakers.forEach(Runnable::run);
    }
  }

  @Override
  public void phase(String port, PhaseEvent.Entered phase) {
    wakeAfter(port, live -> live.phase(phase));
    searches.phase(port, phase);
  }

  @Override
  public void graded(String port, ResultDocument result) {
    wakeAfter(port, live -> live.graded(result));
    searches.graded(port, result);
  }

  @Override
  public void result(String port, ResultDocument result, Path file) {
    String name = file.getFileName().toString();
    wakeAfter(port, live -> live.stored(result.id(), name));
    searches.result(port, result, file);
  }

  @Override
  public void waiting(String port, ResultDocument result) {}

  @Override
  public void visit(String port, Visit visit, Optional<Started> started) {
    wakeAfter(port, live -> live.visit(visit, started));
  }

  @Override
  public void pumps(String port, KnownPumps now) {
    pumps = now;
    wakeAfter(port, live -> live.pumps(now));
  }

  @Override
  public void notice(String text) {
    synchronized (this) {
      noticed++;
      notices.addLast(new Notice(noticed, clock.wall(), text));
      if (notices.size() > NOTICES) {
        notices.removeFirst();
      }
    }
    wake();
  }

  @Override
  public void link(String port, PortState state) {
    wakeAfter(port, live -> live.link(state));
  }

  @Override
  public void linkNotice(String text) {
    ports.forEach(
        (name, live) -> {
          if (text.startsWith(name + ": ")) {
            live.linkText(text.substring(name.length() + 2));
          }
        });
    notice(text);
  }

  @Override
  public void opened(String port, Instant wallClock, LiveStream stream) {
    wakeAfter(port, live -> live.opened(wallClock, stream));
  }

  @Override
  public void reading(String port, StreamEvent event) {
    at(port, live -> live.reading(event));
  }

  @Override
  public void line(String port, long hostMicros) {
    at(port, live -> live.line(hostMicros));
  }

  @Override
  public void dropped(String port, long lines) {
    at(port, live -> live.dropped(lines));
  }

  @Override
  public void closed(String port) {
    wakeAfter(port, LivePort::closed);
    searches.closed(port);
  }
}
