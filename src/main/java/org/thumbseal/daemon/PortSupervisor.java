package org.thumbseal.daemon;

import java.time.Duration;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import org.thumbseal.link.HostClock;
import org.thumbseal.link.Link;
import org.thumbseal.link.LinkConnection;
import org.thumbseal.link.LinkUnavailable;
import org.thumbseal.link.LinkUnavailable.Reason;
import org.tinylog.Logger;

/**
 * Looks after one port: opens it, reads it, and opens it again after a loss, until it is told to
 * stop or a finite input ends. One thread reads, another hands the lines to the handler.
 */
public final class PortSupervisor {
  private static final String WAITING = "; waiting for it";
  private static final int TRIES_BEFORE_REPLUG = 5;
  private static final Duration SLICE = Duration.ofMillis(100);

  private final Link link;
  private final Surroundings surroundings;
  private final LineQueue queue;
  private final Thread reader;
  private final Thread taker;
  private volatile boolean stopping;
  private volatile PortState state = PortState.ABSENT;
  private volatile PortOutcome outcome = PortOutcome.RUNNING;
  private volatile @Nullable LinkUnavailable refusal;
  private @Nullable Reason toldReason;
  private boolean everOpened;
  private int failures;
  private boolean missing;

  /** Takes charge of a link, without touching it yet. */
  public PortSupervisor(Link link, SessionHandler handler, Surroundings surroundings) {
    this.link = link;
    this.surroundings = surroundings;
    this.queue = new LineQueue(surroundings.limits().queueLines());
    this.reader = thread("read ", this::run);
    this.taker = thread("take ", new Delivery(queue, handler, this::fault));
  }

  private Thread thread(String kind, Runnable work) {
    Thread thread = new Thread(work, kind + link.name());
    thread.setDaemon(true);
    return thread;
  }

  /** Begins; may be called once. */
  public void start() {
    taker.start();
    reader.start();
  }

  /** Asks it to stop and returns at once; for any thread, the handler's too. */
  public void requestStop() {
    stopping = true;
  }

  /**
   * Stops in order: reading ends and the port is let go within a few seconds at most, then the
   * handler takes what is still waiting and is told that the session is closed. Returns when it is
   * through with that, however long it takes. Not for the handler's own thread.
   */
  public void stop() throws InterruptedException {
    requestStop();
    awaitEnd();
  }

  /** Waits until nobody looks after the port any more. */
  public void awaitEnd() throws InterruptedException {
    reader.join();
    taker.join();
  }

  /** The address of the port. */
  public String name() {
    return link.name();
  }

  /** Where the port stands now. */
  public PortState state() {
    return state;
  }

  /** How it came to an end, if it has. */
  public PortOutcome outcome() {
    return outcome;
  }

  /** Why it was given up, for the outcome {@link PortOutcome#NOT_OPENED}. */
  public Optional<LinkUnavailable> refusal() {
    return Optional.ofNullable(refusal);
  }

  private void run() {
    try {
      while (outcome == PortOutcome.RUNNING) {
        long attempted = surroundings.clock().nanos();
        become(PortState.OPENING);
        tryOnce();
        waitBeforeNext(attempted);
      }
    } catch (Throwable e) { // Without memory a port must not fall silent without a word.
      fault(e);
    } finally {
      become(PortState.ENDED);
      queue.put(new Happening.Last());
    }
  }

  private void tryOnce() {
    try (LinkConnection connection = link.open()) {
      everOpened = true;
      isThere(true);
      toldReason = null;
      become(PortState.SETTLING);
      PortSession session = new PortSession(link, queue, surroundings, this::seems);
      ended(session.read(connection, () -> stopping), session.heard());
    } catch (LinkUnavailable e) {
      unavailable(e);
    }
  }

  private void seems(Impression impression) {
    if (impression == Impression.SPEAKING) {
      become(PortState.STREAMING);
    }
    tell(impression.text() + (impression == Impression.SPEAKING ? "" : otherProgram()));
  }

  /** Who takes every byte away leaves nothing to be seen of it but a port that is silent. */
  private String otherProgram() {
    return link.otherProgram()
        .map(who -> "; another program, " + who + ", has " + link.name() + " open: close it")
        .orElse("");
  }

  private void ended(SessionEnd end, boolean wasHeard) {
    failures = wasHeard ? 1 : failures + 1;
    finish(end.outcome());
    if (end.outcome() == PortOutcome.RUNNING) {
      become(PortState.LOST);
      // That a port just lost is not there goes without saying.
      toldReason = Reason.MISSING;
      tell(end.why() + WAITING + otherProgram());
      adviseReplug();
    } else if (end.outcome() == PortOutcome.INPUT_ENDED) {
      tell(end.why());
    }
  }

  private void unavailable(LinkUnavailable e) {
    isThere(e.reason() != Reason.MISSING);
    failures++;
    become(PortState.ABSENT);
    boolean unwanted = !surroundings.limits().waiting() && !everOpened;
    if (stopping) {
      finish(PortOutcome.STOPPED);
    } else if (unwanted || link.finite() || e.reason() == Reason.NO_LIBRARY) {
      refusal = e;
      finish(PortOutcome.NOT_OPENED);
      tell(String.valueOf(e.getMessage()));
    } else if (toldReason != e.reason()) {
      toldReason = e.reason();
      tell(e.getMessage() + (missing ? WAITING : "; trying again"));
    } else if (e.reason() == Reason.FAILED) {
      adviseReplug();
    }
  }

  /** A port that was plugged in is tried as quickly as at first. */
  private void isThere(boolean there) {
    failures = missing && there ? 0 : failures;
    missing = !there;
  }

  /** Some drivers recover by nothing else. */
  private void adviseReplug() {
    if (failures == TRIES_BEFORE_REPLUG && link.isPort()) {
      tell("failed " + failures + " times in a row; unplug it, wait 5 s and plug it in again");
    }
  }

  private void waitBeforeNext(long attempted) {
    HostClock clock = surroundings.clock();
    // From the attempt, not from its failure: a slow driver must not make the wait longer.
    long from = state == PortState.LOST ? clock.nanos() : attempted;
    long until = from + surroundings.limits().backOff().after(failures, !missing).toNanos();
    while (outcome == PortOutcome.RUNNING && clock.nanos() - until < 0) {
      if (stopping) {
        finish(PortOutcome.STOPPED);
      } else {
        clock.pause(Duration.ofNanos(Math.min(until - clock.nanos(), SLICE.toNanos())));
      }
    }
  }

  private synchronized void finish(PortOutcome how) {
    if (outcome == PortOutcome.RUNNING) {
      outcome = how;
    }
  }

  private void fault(Throwable e) {
    finish(PortOutcome.FAULT);
    requestStop();
    try {
      Logger.error(e, "{}: given up", link.name());
      tell("given up after a fault of this program; the log says more");
    } catch (Throwable again) { // The thread must go on, or those who wait for it never end.
      e.addSuppressed(again);
    }
  }

  private void become(PortState now) {
    state = now;
    surroundings.watcher().became(link.name(), now);
  }

  private void tell(String what) {
    surroundings.watcher().changed(link.name() + ": " + what);
  }
}
