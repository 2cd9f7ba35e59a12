package org.thumbseal.feed;

import java.io.IOException;
import java.nio.file.FileSystemException;
import java.nio.file.Files;
import java.time.Duration;
import java.util.function.UnaryOperator;
import org.thumbseal.json.JsonRefusedException;

/**
 * Keeps the record of an outbox: at once after the first acknowledgement, then about once a second,
 * for each time wears a memory card. What was acknowledged since and is not kept when the power
 * goes is sent a second time. A disk that is full holds up nothing.
 */
final class OutboxKeeper {
  private static final long OFTEN = Duration.ofSeconds(1).toNanos();
  private static final int MOST_UNKEPT = 64;

  private final OutboxRecord record;
  private final OutboxLock lock;
  private final FeedSurroundings around;
  private OutboxState state;
  private OutboxState kept;
  private long acknowledged;
  private int unkept;
  private boolean saved;
  private long savedNanos;
  private boolean troubled;

  OutboxKeeper(OutboxRecord record, OutboxLock lock, Start start) {
    this.record = record;
    this.lock = lock;
    this.around = start.around();
    this.kept = start.state();
    this.state = start.state();
  }

  /** What it begins with. */
  record Start(OutboxState state, FeedSurroundings around) {}

  static OutboxKeeper open(
      FeedPlace place, FeedTarget target, FeedBegin begin, FeedSurroundings around)
      throws FeedException {
    try {
      Files.createDirectories(place.outbox());
    } catch (IOException e) {
      throw FeedException.machine(
          place.outbox() + ": cannot be made; name another folder with --outbox");
    }
    OutboxRecord record = new OutboxRecord(place.outbox(), target);
    OutboxLock lock = OutboxLock.take(record.file());
    return new OutboxKeeper(record, lock, new Start(begun(load(record, around), begin), around));
  }

  private static OutboxState load(OutboxRecord record, FeedSurroundings around) {
    try {
      return record.load();
    } catch (JsonRefusedException e) {
      around.tell(record.file() + ": " + e.getMessage() + "; everything is sent again");
      return OutboxState.NEW;
    }
  }

  private static OutboxState begun(OutboxState kept, FeedBegin begin) {
    return switch (begin) {
      case GO_ON -> kept;
      case REFUSED_AGAIN -> kept.with(kept.progress().again());
      case ALL_AGAIN -> OutboxState.NEW;
    };
  }

  OutboxState state() {
    return state;
  }

  /** How many were acknowledged since it was opened. */
  long acknowledged() {
    return acknowledged;
  }

  void change(UnaryOperator<OutboxState> change) {
    state = change.apply(state);
  }

  /** One more was. */
  void acknowledged(Progress progress) {
    acknowledged++;
    unkept++;
    state = state.with(progress);
    if (!saved || unkept >= MOST_UNKEPT || around.clock().nanos() - savedNanos >= OFTEN) {
      save();
    }
  }

  /** Writes it down, if anything changed since it was. */
  void save() {
    if (state.equals(kept)) {
      return;
    }
    saved = true;
    savedNanos = around.clock().nanos();
    unkept = 0;
    try {
      record.save(state);
      kept = state;
      good();
    } catch (IOException e) {
      bad(e);
    }
  }

  private void good() {
    if (troubled) {
      troubled = false;
      around.tell(record.file() + ": can be written again");
    }
  }

  private void bad(IOException e) {
    if (!troubled) {
      troubled = true;
      boolean named = e instanceof FileSystemException f && f.getReason() != null;
      String why = named ? ((FileSystemException) e).getReason() : String.valueOf(e.getMessage());
      around.tell(
          record.file()
              + ": cannot be written: "
              + why
              + "; sending goes on, and after a restart some are sent again");
    }
  }

  /** Writes down how far it came, and lets others send. */
  void close() throws FeedException {
    save();
    try {
      lock.close();
    } catch (IOException e) {
      throw FeedException.machine("the outbox cannot be let go of: " + e.getMessage());
    }
  }
}
