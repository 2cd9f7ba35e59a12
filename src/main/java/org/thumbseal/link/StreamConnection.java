package org.thumbseal.link;

import java.io.IOException;
import java.io.InputStream;
import java.util.Arrays;
import java.util.concurrent.ArrayBlockingQueue;
import java.util.concurrent.BlockingQueue;
import java.util.concurrent.TimeUnit;
import org.jspecify.annotations.Nullable;

/**
 * Reads a stream that knows no time-out. A thread of its own waits in the stream, for nothing can
 * wake it from there; it is a daemon thread, so that it does not keep the program alive.
 */
final class StreamConnection implements LinkConnection {
  private static final int CHUNK = 4_096;
  private static final int CHUNKS_WAITING = 64;
  private static final long READ_MILLIS = 250;
  private static final byte[] END = new byte[0];

  private final InputStream in;
  private final BlockingQueue<byte[]> chunks = new ArrayBlockingQueue<>(CHUNKS_WAITING);
  private byte[] current = END;
  private int taken;
  private boolean ended;
  private volatile boolean closed;

  private StreamConnection(InputStream in) {
    this.in = in;
  }

  static StreamConnection over(InputStream in) {
    StreamConnection connection = new StreamConnection(in);
    Thread pump = new Thread(connection::pump, "stream-pump");
    pump.setDaemon(true);
    pump.start();
    return connection;
  }

  private void pump() {
    byte[] buffer = new byte[CHUNK];
    try {
      for (int count = next(buffer); count >= 0 && !closed; count = next(buffer)) {
        chunks.put(Arrays.copyOf(buffer, count));
      }
      chunks.put(END);
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
    }
  }

  /** A stream that fails is at its end. */
  private int next(byte[] buffer) {
    try {
      return in.read(buffer);
    } catch (IOException e) {
      return LOST;
    }
  }

  @Override
  public int read(byte[] buffer) {
    if (closed) {
      return LOST;
    }
    if (taken == current.length && !fetch()) {
      return ended ? LOST : 0;
    }
    int count = Math.min(buffer.length, current.length - taken);
    System.arraycopy(current, taken, buffer, 0, count);
    taken += count;
    return count;
  }

  private boolean fetch() {
    byte[] chunk = ended ? null : poll();
    if (chunk == null) {
      return false;
    }
    current = chunk;
    taken = 0;
    ended = chunk.length == 0;
    return !ended;
  }

  private byte @Nullable [] poll() {
    try {
      return chunks.poll(READ_MILLIS, TimeUnit.MILLISECONDS);
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
      return null;
    }
  }

  @Override
  public void close() {
    closed = true;
    chunks.clear();
  }
}
