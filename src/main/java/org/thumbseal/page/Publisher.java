package org.thumbseal.page;

import java.util.ArrayList;
import java.util.Iterator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.concurrent.ArrayBlockingQueue;
import java.util.concurrent.BlockingQueue;
import java.util.concurrent.TimeUnit;
import org.thumbseal.json.Json;
import org.thumbseal.link.HostClock;
import org.thumbseal.pipeline.KnownPumps;
import org.thumbseal.record.Software;
import tools.jackson.databind.node.ArrayNode;
import tools.jackson.databind.node.ObjectNode;

/**
 * Tells all pages what happens, on one thread, so that each page has everything in the same order:
 * the whole state first, then the changes. Nothing is made as long as no page looks.
 */
final class Publisher implements AutoCloseable {
  /** Points go out this often, ms; what must not wait, at once. */
  private static final long PERIOD = 50;

  private static final long RESTLESS_NANOS = 200_000_000;
  private static final long BEAT_NANOS = 2_000_000_000;

  private final LiveBench bench;
  private final HostClock clock;
  private final String results;
  private final Map<Mailbox, Runnable> pages = new LinkedHashMap<>();
  private final Map<Mailbox, Runnable> joining = new LinkedHashMap<>();
  private final List<PortNews> ports = new ArrayList<>();
  private final BlockingQueue<Boolean> news = new ArrayBlockingQueue<>(1);
  private final Thread thread = new Thread(this::run, "page events");
  private volatile boolean closed;
  private KnownPumps pumps = KnownPumps.NONE;
  private long noticed;
  private long restlessAt;
  private long beatAt;

  /**
   * Begins.
   *
   * @param results name of the folder of results
   */
  Publisher(LiveBench bench, HostClock clock, String results) {
    this.bench = bench;
    this.clock = clock;
    this.results = results;
    this.restlessAt = clock.nanos();
    this.beatAt = clock.nanos();
    bench.ports().forEach(port -> ports.add(new PortNews(port)));
    bench.onNews(this::wake);
    thread.setDaemon(true);
    thread.start();
  }

  private void wake() {
    news.offer(true);
  }

  /** A page looks; it gets the whole state, then every change. {@code drop} ends its stream. */
  synchronized void join(Mailbox page, Runnable drop) {
    if (closed) {
      page.close();
      return;
    }
    joining.put(page, drop);
    wake();
  }

  /** A page looks no more. */
  synchronized void leave(Mailbox page) {
    joining.remove(page);
    pages.remove(page);
  }

  @Override
  public synchronized void close() {
    closed = true;
    pages.keySet().forEach(Mailbox::close);
    joining.keySet().forEach(Mailbox::close);
    wake();
  }

  private void run() {
    try {
      while (await()) {
        tellChanges();
        welcome();
      }
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
    }
  }

  /** Waits until there is something to do; false when there never will be again. */
  private boolean await() throws InterruptedException {
    if (isLookedAt()) {
      news.poll(PERIOD, TimeUnit.MILLISECONDS);
    }
    while (!closed && !isLookedAt()) {
      news.take();
    }
    return !closed;
  }

  private synchronized boolean isLookedAt() {
    return !pages.isEmpty() || !joining.isEmpty();
  }

  private void tellChanges() {
    long now = clock.nanos();
    boolean restless = now - restlessAt >= RESTLESS_NANOS;
    restlessAt = restless ? now : restlessAt;
    for (PortNews port : ports) {
      port.since(restless).forEach(this::tell);
    }
    tellPumps();
    notices().forEach(notice -> tell(PageEvent.of("notice", tree(notice))));
    if (now - beatAt >= BEAT_NANOS) {
      beatAt = now;
      tell(PageEvent.of("beat", Json.object().put("now", clock.wall().toEpochMilli())));
    }
  }

  private void tellPumps() {
    KnownPumps now = bench.pumps();
    if (!now.equals(pumps)) {
      pumps = now;
      tell(PageEvent.of("register", Json.object().set("register", PumpsTree.of(now))));
    }
  }

  private List<LiveBench.Notice> notices() {
    List<LiveBench.Notice> fresh =
        bench.notices().stream().filter(notice -> notice.number() > noticed).toList();
    fresh.forEach(notice -> noticed = notice.number());
    return fresh;
  }

  private static ObjectNode tree(LiveBench.Notice notice) {
    return Json.object().put("at", notice.at().toEpochMilli()).put("text", notice.text());
  }

  private synchronized void tell(byte[] event) {
    Iterator<Map.Entry<Mailbox, Runnable>> each = pages.entrySet().iterator();
    while (each.hasNext()) {
      Map.Entry<Mailbox, Runnable> page = each.next();
      if (!page.getKey().offer(event)) {
        each.remove();
        page.getValue().run();
      }
    }
  }

  private synchronized void welcome() {
    if (!joining.isEmpty()) {
      byte[] whole = PageEvent.of("bench", whole());
      joining.keySet().forEach(page -> page.offer(whole));
      pages.putAll(joining);
      joining.clear();
    }
  }

  private ObjectNode whole() {
    ObjectNode whole = Json.object();
    whole.put("version", Software.VERSION).put("now", clock.wall().toEpochMilli());
    whole.put("results", results);
    pumps = bench.pumps();
    if (!pumps.equals(KnownPumps.NONE)) {
      whole.set("register", PumpsTree.of(pumps));
    }
    ArrayNode all = whole.putArray("ports");
    ports.forEach(port -> all.add(port.whole()));
    ArrayNode said = whole.putArray("notices");
    bench.notices().stream()
        .filter(notice -> notice.number() <= noticed)
        .forEach(notice -> said.add(tree(notice)));
    return whole;
  }
}
