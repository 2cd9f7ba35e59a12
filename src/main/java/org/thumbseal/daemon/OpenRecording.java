package org.thumbseal.daemon;

import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import org.thumbseal.archive.ArchiveException;
import org.thumbseal.archive.OpenCapture;
import org.thumbseal.capture.CaptureLine;
import org.thumbseal.pipeline.LiveStream;

/**
 * Keeps on the disk what a live stream would hand out as a capture now, so that a test outlives the
 * process at any moment. While the disk refuses, everything is in the stream's memory, and is
 * written whole as soon as it can be.
 */
final class OpenRecording {
  /** Lines stay in this process for so long at most; more is lost when it is killed. */
  private static final long FLUSH_MICROS = 250_000;

  private final Object unfolding;
  private final OpenCapture file;
  private final DiskState.Retry disk;
  private final StringBuilder unwritten = new StringBuilder();
  private @Nullable LiveStream stream;
  private long writtenMicros;
  private boolean whole;

  /** Whoever writes a capture anew holds the lock meanwhile. */
  OpenRecording(OpenCapture file, DiskState state, Object unfolding) {
    this.unfolding = unfolding;
    this.file = file;
    this.disk = state.retry();
  }

  void begin(LiveStream of) {
    stream = of;
    writtenMicros = 0;
    rewrite();
  }

  void added(CaptureLine line) {
    if (whole) {
      unwritten.append(line.format()).append('\n');
    }
  }

  /** Time has passed. */
  void tick(long hostMicros) {
    if (!whole) {
      retry();
    } else if (hostMicros - writtenMicros >= FLUSH_MICROS) {
      writtenMicros = hostMicros;
      flush();
    }
  }

  /** Now it must outlive a power cut too. */
  void force() {
    flush();
    if (whole) {
      attempt(file::force);
    }
  }

  /** The stream has forgotten what was before. */
  void cut() {
    rewrite();
  }

  /** Whether the file holds all that the stream holds. */
  boolean isWhole() {
    return whole && unwritten.isEmpty();
  }

  Optional<Path> file() {
    return file.file();
  }

  /** Leaves the file to a result that could not be stored; what follows goes into another. */
  void leave() {
    whole = false;
    attempt(file::leave);
  }

  /** The stream has ended, and what it held is stored, or left to a result. */
  void end() {
    stream = null;
    whole = false;
    unwritten.setLength(0);
    try {
      file.remove();
    } catch (ArchiveException e) {
      // A disk that takes nothing has been told of; what is left is looked at at the next start.
      disk.failed(String.valueOf(e.getMessage()));
    }
    disk.end();
  }

  private void retry() {
    if (disk.isDue()) {
      rewrite();
    }
  }

  private void rewrite() {
    LiveStream live = stream;
    whole = false;
    unwritten.setLength(0);
    if (live != null) {
      synchronized (unfolding) {
        whole = attempt(() -> file.rewrite(live.capture().format()));
      }
    }
  }

  private void flush() {
    if (whole && !unwritten.isEmpty()) {
      byte[] lines = unwritten.toString().getBytes(StandardCharsets.UTF_8);
      unwritten.setLength(0);
      whole = attempt(() -> file.append(lines));
    }
  }

  private boolean attempt(Writing writing) {
    try {
      writing.run();
      disk.succeeded();
      return true;
    } catch (ArchiveException e) {
      whole = false;
      disk.failed(String.valueOf(e.getMessage()));
      return false;
    }
  }

  @FunctionalInterface
  private interface Writing {
    void run() throws ArchiveException;
  }
}
