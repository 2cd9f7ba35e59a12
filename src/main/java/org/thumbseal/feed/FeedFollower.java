package org.thumbseal.feed;

import java.time.Duration;
import java.util.Optional;
import java.util.concurrent.CountDownLatch;
import java.util.concurrent.Semaphore;
import java.util.concurrent.TimeUnit;
import java.util.function.DoubleSupplier;

/**
 * Sends documents as they are stored, in a thread of its own. A target that is away is told once
 * and tried again after longer and longer pauses; nobody waits for it.
 */
public final class FeedFollower implements AutoCloseable {
  private static final Duration PATIENCE_AT_THE_END = Duration.ofSeconds(3);

  private final Opening opening;
  private final Rhythm rhythm;
  private final FeedSurroundings around;
  private final Semaphore news = new Semaphore(0);
  private final CountDownLatch closing = new CountDownLatch(1);
  private final Thread thread = new Thread(this::follow, "feed");
  private volatile Optional<Feeder> open = Optional.empty();
  private volatile String unopened = "";
  private String told = "";
  private int failures;

  /** Opens the outbox. */
  @FunctionalInterface
  public interface Opening {
    /**
     * May be tried several times.
     *
     * @throws FeedException if it cannot be now
     */
    Feeder open() throws FeedException;
  }

  /**
   * How often it looks.
   *
   * @param look at the directory, where nothing was said
   * @param retry at a target that is away
   * @param chance from 0 up to 1, drawn for each wait
   */
  public record Rhythm(Duration look, RetryPlan retry, DoubleSupplier chance) {
    /** Every five seconds. */
    public static Rhythm standard(DoubleSupplier chance) {
      return new Rhythm(Duration.ofSeconds(5), RetryPlan.STANDARD, chance);
    }
  }

  private FeedFollower(Opening opening, Rhythm rhythm, FeedSurroundings around) {
    this.opening = opening;
    this.rhythm = rhythm;
    this.around = around;
    thread.setDaemon(true);
  }

  /** Begins; notices are told in its thread. */
  public static FeedFollower start(Opening opening, Rhythm rhythm, FeedSurroundings around) {
    FeedFollower follower = new FeedFollower(opening, rhythm, around);
    follower.thread.start();
    return follower;
  }

  /** A document was stored; never waits. */
  public void stored() {
    if (news.availablePermits() == 0) {
      news.release();
    }
  }

  /** How the outbox stands. */
  public FeedState state() {
    FeedState state = open.map(Feeder::state).orElse(FeedState.UNKNOWN);
    return unopened.isEmpty()
        ? state
        : new FeedState(state.waiting(), state.since(), unopened, state.refused());
  }

  /** Waits until it is closed by another thread. */
  public void awaitEnd() throws InterruptedException {
    thread.join();
  }

  private void follow() {
    try {
      boolean last = false;
      while (!last) {
        last = isClosing();
        attempt();
        if (failures > 0 && closing.getCount() == 0) {
          return;
        }
        await();
      }
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
    } finally {
      letGo();
    }
  }

  private boolean isClosing() {
    return closing.getCount() == 0;
  }

  /** What comes meanwhile does not shorten a wait for a target that is away. */
  private void await() throws InterruptedException {
    if (isClosing()) {
      return;
    }
    if (failures > 0) {
      Duration wait = rhythm.retry().after(failures, rhythm.chance().getAsDouble());
      closing.await(wait.toNanos(), TimeUnit.NANOSECONDS);
    } else {
      news.tryAcquire(rhythm.look().toNanos(), TimeUnit.NANOSECONDS);
    }
    news.drainPermits();
  }

  private void attempt() throws InterruptedException {
    try {
      Feeder feeder = open.isPresent() ? open.get() : opening.open();
      open = Optional.of(feeder);
      unopened = "";
      done(feeder.round());
    } catch (FeedException e) {
      unopened = String.valueOf(e.getMessage());
      failed(unopened);
    } catch (RuntimeException e) {
      failed("an error of this program, please report it: " + e);
    }
  }

  private void done(Feeder.Round round) {
    if (round.sent() > 0 || round.trouble().isEmpty()) {
      recovered(round.sent());
    }
    if (!round.trouble().isEmpty()) {
      failed(round.trouble());
    }
  }

  private void recovered(long sent) {
    failures = 0;
    if (!told.isEmpty()) {
      told = "";
      around.tell("it goes again; " + sent + " sent");
    }
  }

  private void failed(String why) {
    failures++;
    if (!told.equals(why)) {
      told = why;
      around.tell(why + "; results are stored all the same, and sent when it goes");
    }
  }

  private void letGo() {
    try {
      if (open.isPresent()) {
        open.get().close();
      }
    } catch (FeedException e) {
      around.tell(String.valueOf(e.getMessage()));
    }
  }

  /** Sends what was stored last, if that is done within three seconds; else it is done later. */
  @Override
  public void close() {
    closing.countDown();
    news.release();
    try {
      thread.join(PATIENCE_AT_THE_END.toMillis());
      thread.interrupt();
    } catch (InterruptedException e) {
      thread.interrupt();
      Thread.currentThread().interrupt();
    }
  }
}
