package org.thumbseal.capture;

import java.util.ArrayList;
import java.util.List;
import org.thumbseal.wire.Decoded;
import org.thumbseal.wire.LineAssembler;
import org.thumbseal.wire.LineFormatException;
import org.thumbseal.wire.PlainLines;

/**
 * What a board printed, saved by another program: lines and nothing else. Nothing tells when they
 * arrived, so each must carry the board's own time.
 *
 * @param format how they are written
 * @param lines all of them, without their ends
 */
public record BareRecording(PlainLines format, List<String> lines) {
  /** Keeps a copy of the lines. */
  public BareRecording {
    lines = List.copyOf(lines);
  }

  /**
   * Reads the bytes of a file.
   *
   * @param format written form of the lines
   * @throws CaptureFormatException if that cannot be used, the lines have no times, or none fits
   */
  public static BareRecording read(byte[] bytes, String format) throws CaptureFormatException {
    try {
      return read(bytes, PlainLines.parse(format));
    } catch (LineFormatException e) {
      throw new CaptureFormatException(String.valueOf(e.getMessage()));
    }
  }

  /**
   * Reads the bytes of a file.
   *
   * @throws CaptureFormatException if the lines have no times, or none is of that format
   */
  public static BareRecording read(byte[] bytes, PlainLines format) throws CaptureFormatException {
    if (!format.isTimed()) {
      throw new CaptureFormatException(
          "a recording of bare lines says nothing of when they came: the format needs the board's"
              + " own time (time=...)");
    }
    List<String> lines = new ArrayList<>();
    new LineAssembler(lines::add).accept(bytes, 0, bytes.length);
    if (lines.stream().noneMatch(line -> format.decode(line) instanceof Decoded.Good)) {
      throw new CaptureFormatException(
          "no line fits "
              + format.text()
              + lines.stream()
                  .findFirst()
                  .map(Quote::of)
                  .map(l -> "; the first is '" + l + "'")
                  .orElse(""));
    }
    return new BareRecording(format, lines);
  }
}
