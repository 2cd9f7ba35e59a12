package org.thumbseal.index;

import java.nio.file.Path;
import java.time.Duration;
import java.util.Optional;
import java.util.concurrent.Semaphore;
import java.util.concurrent.TimeUnit;
import java.util.function.Consumer;
import org.thumbseal.seal.TrustStore;

/**
 * Keeps an index in step with a results directory into which tests are being stored, in a thread of
 * its own. A base that is away is told once, tried again after longer and longer pauses, and caught
 * up with when it is back; nobody waits for it.
 */
public final class RecordsFollower implements AutoCloseable {
  private static final Duration LONGEST_PAUSE = Duration.ofMinutes(5);
  private static final Duration PATIENCE_AT_THE_END = Duration.ofSeconds(3);

  private final Place place;
  private final Consumer<String> notices;
  private final Duration firstPause;
  private final Semaphore news = new Semaphore(1);
  private final Thread thread = new Thread(this::follow, "records");
  private volatile boolean closing;
  private Optional<Records> open = Optional.empty();
  private Optional<Duration> pause = Optional.empty();

  /**
   * Where from and where to.
   *
   * @param base that is kept in step
   * @param results directory with the documents
   * @param trust whose documents count
   */
  public record Place(RecordsAddress base, Path results, TrustStore trust) {}

  private RecordsFollower(Place place, Consumer<String> notices, Duration firstPause) {
    this.place = place;
    this.notices = notices;
    this.firstPause = firstPause;
    thread.setDaemon(true);
  }

  /** Starts with what is there, which may be much; notices are told in its thread. */
  public static RecordsFollower start(Place place, Consumer<String> notices) {
    return start(place, notices, Duration.ofSeconds(5));
  }

  /**
   * The same for tests.
   *
   * @param firstPause after the first failure; each one after it is twice as long
   */
  static RecordsFollower start(Place place, Consumer<String> notices, Duration firstPause) {
    RecordsFollower follower = new RecordsFollower(place, notices, firstPause);
    follower.thread.start();
    return follower;
  }

  /** A document was stored; never waits. */
  public void stored() {
    news.release();
  }

  private void follow() {
    try {
      while (!closing || news.availablePermits() > 0) {
        awaitNews();
        news.drainPermits();
        catchUp();
        if (closing && pause.isPresent()) {
          return;
        }
      }
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
    } finally {
      letGo();
    }
  }

  private void awaitNews() throws InterruptedException {
    if (pause.isEmpty()) {
      news.acquire();
      return;
    }
    long end = System.nanoTime() + pause.get().toNanos();
    while (!closing && System.nanoTime() < end) {
      // What is stored meanwhile does not shorten the pause; being told to stop does.
      if (news.tryAcquire(end - System.nanoTime(), TimeUnit.NANOSECONDS) && !closing) {
        TimeUnit.MILLISECONDS.sleep(Math.min(100, pause.get().toMillis()));
      }
    }
  }

  private void catchUp() {
    try {
      Records records = open.isPresent() ? open.get() : Records.open(place.base(), this::tell);
      open = Optional.of(records);
      Refreshed refreshed = records.refresh(place.results(), place.trust());
      pause.ifPresent(p -> tell("is there again, and has taken in " + refreshed.added()));
      pause = Optional.empty();
    } catch (RecordsException e) {
      failed(String.valueOf(e.getMessage()));
    } catch (RuntimeException e) {
      failed("an error of this program, please report it: " + e);
    }
  }

  private void failed(String why) {
    letGo();
    if (pause.isEmpty()) {
      notices.accept(
          "records: " + why + "; results are stored all the same, and taken in when it is there");
    }
    Duration next = pause.map(p -> p.multipliedBy(2)).orElse(firstPause);
    pause = Optional.of(next.compareTo(LONGEST_PAUSE) < 0 ? next : LONGEST_PAUSE);
  }

  private void tell(String text) {
    notices.accept("records: " + place.base().shown() + ": " + text);
  }

  private void letGo() {
    try {
      if (open.isPresent()) {
        open.get().close();
      }
    } catch (RecordsException e) {
      // It is gone anyway.
    }
    open = Optional.empty();
  }

  /** Takes in what was stored last, if that is done within three seconds; else it is done later. */
  @Override
  public void close() {
    closing = true;
    news.release();
    try {
      thread.join(PATIENCE_AT_THE_END.toMillis());
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
    }
    thread.interrupt();
  }
}
