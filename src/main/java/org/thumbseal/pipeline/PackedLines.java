package org.thumbseal.pipeline;

import java.nio.ByteBuffer;
import java.nio.charset.StandardCharsets;
import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Deque;
import java.util.List;
import org.thumbseal.capture.CaptureLine;

/**
 * Lines first in, first out, as bytes: a third of the memory that they take as objects, which
 * decides how many ports a small computer can look after.
 */
final class PackedLines {
  private static final int BLOCK = 8_192;
  private static final int HEAD = Long.BYTES + Integer.BYTES;

  /** Written up to its position, read up to its mark. */
  private static final class Block {
    private final ByteBuffer bytes;
    private int read;

    Block(int size) {
      this.bytes = ByteBuffer.allocate(size);
    }
  }

  private final Deque<Block> blocks = new ArrayDeque<>();
  private int size;
  private long lastMicros;

  void add(CaptureLine line) {
    int length = HEAD + line.text().length();
    Block last = blocks.peekLast();
    if (last == null || last.bytes.remaining() < length) {
      last = new Block(Math.max(BLOCK, length));
      blocks.addLast(last);
    }
    last.bytes.putLong(line.hostMicros()).putInt(line.text().length());
    last.bytes.put(line.text().getBytes(StandardCharsets.ISO_8859_1));
    lastMicros = line.hostMicros();
    size++;
  }

  int size() {
    return size;
  }

  boolean isEmpty() {
    return size == 0;
  }

  /** Arrival of the oldest line; there must be one. */
  long firstMicros() {
    Block first = blocks.getFirst();
    return first.bytes.getLong(first.read);
  }

  /** Arrival of the newest line ever added. */
  long lastMicros() {
    return lastMicros;
  }

  CaptureLine removeFirst() {
    Block first = blocks.getFirst();
    CaptureLine line = at(first, first.read);
    first.read += HEAD + line.text().length();
    if (first.read == first.bytes.position()) {
      blocks.removeFirst();
    }
    size--;
    return line;
  }

  /** All, oldest first. */
  List<CaptureLine> all() {
    List<CaptureLine> all = new ArrayList<>(size);
    for (Block block : blocks) {
      int next = block.read;
      while (next < block.bytes.position()) {
        CaptureLine line = at(block, next);
        all.add(line);
        next += HEAD + line.text().length();
      }
    }
    return all;
  }

  private static CaptureLine at(Block block, int index) {
    int length = block.bytes.getInt(index + Long.BYTES);
    String text =
        new String(block.bytes.array(), index + HEAD, length, StandardCharsets.ISO_8859_1);
    return new CaptureLine(block.bytes.getLong(index), text);
  }
}
