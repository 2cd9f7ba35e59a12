package org.thumbseal.capture;

import java.nio.charset.StandardCharsets;
import java.util.List;

/**
 * A whole capture in memory.
 *
 * @param header what was known when it was started
 * @param lines every line received, in order
 * @param unreadable lines of the file that are no capture lines; the last one of a file cut off by
 *     a power loss is not counted
 */
public record Capture(CaptureHeader header, List<CaptureLine> lines, int unreadable) {
  /** Keeps a copy of the lines. */
  public Capture {
    lines = List.copyOf(lines);
  }

  /** The bytes of the capture file. */
  public byte[] format() {
    StringBuilder out = new StringBuilder(header.format());
    lines.forEach(line -> out.append(line.format()).append('\n'));
    return out.toString().getBytes(StandardCharsets.UTF_8);
  }
}
