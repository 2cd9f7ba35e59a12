package org.thumbseal.capture;

import java.nio.charset.StandardCharsets;
import java.time.DateTimeException;
import java.time.Instant;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/** Reads a capture file; one that was cut off anywhere is read up to its last whole line. */
public final class CaptureReader {
  private static final int LONGEST_LINE = 2_048;
  private static final String MAGIC = CaptureHeader.MAGIC;

  private final Map<String, String> facts = new LinkedHashMap<>();
  private final List<CaptureLine> lines = new ArrayList<>();
  private Optional<Instant> started = Optional.empty();
  private int unreadable;

  private CaptureReader() {}

  /** Whether these bytes begin like a capture file of any version. */
  public static boolean looksLikeCapture(byte[] bytes) {
    byte[] magic = "# thumbseal capture".getBytes(StandardCharsets.US_ASCII);
    return bytes.length >= magic.length
        && java.util.Arrays.equals(magic, 0, magic.length, bytes, 0, magic.length);
  }

  /**
   * Reads the bytes of a capture file.
   *
   * @throws CaptureFormatException if it is no capture, or of a version this program does not know
   */
  public static Capture read(byte[] bytes) throws CaptureFormatException {
    String text = new String(bytes, StandardCharsets.UTF_8);
    int end = text.lastIndexOf('\n');
    if (!looksLikeCapture(bytes) || end < 0) {
      throw new CaptureFormatException("not a capture file (first line is not '" + MAGIC + "')");
    }
    return new CaptureReader().readLines(text.substring(0, end + 1).split("\r?\n", 0));
  }

  private Capture readLines(String[] texts) throws CaptureFormatException {
    if (!texts[0].strip().equals(MAGIC)) {
      throw new CaptureFormatException(
          "capture version not known: '"
              + Quote.of(texts[0])
              + "'; this program reads '"
              + MAGIC
              + "'");
    }
    for (int i = 1; i < texts.length; i++) {
      readLine(texts[i]);
    }
    if (started.isEmpty() && !lines.isEmpty()) {
      throw new CaptureFormatException(
          "capture without a '# started <time>' line: add one, such as '# started"
              + " 2026-03-02T07:15:00Z', so that its tests have a date");
    }
    CaptureHeader header = new CaptureHeader(started.orElse(Instant.EPOCH), facts);
    return new Capture(header, lines, unreadable);
  }

  private void readLine(String text) throws CaptureFormatException {
    if (text.startsWith("# ") && lines.isEmpty()) {
      readFact(text.substring(2).strip());
    } else if (text.length() > LONGEST_LINE) {
      unreadable++;
    } else {
      CaptureLine.parse(text).ifPresentOrElse(lines::add, () -> unreadable++);
    }
  }

  private void readFact(String fact) throws CaptureFormatException {
    int space = fact.indexOf(' ');
    String key = space < 0 ? fact : fact.substring(0, space);
    String value = space < 0 ? "" : fact.substring(space + 1).strip();
    if (key.equals("started")) {
      started = Optional.of(started.isPresent() ? started.get() : instant(value));
    } else if (!key.isEmpty()) {
      facts.putIfAbsent(key, value);
    }
  }

  private static Instant instant(String value) throws CaptureFormatException {
    try {
      return java.time.OffsetDateTime.parse(value).toInstant();
    } catch (DateTimeException e) {
      throw new CaptureFormatException(
          "header line 'started' is not an RFC 3339 time: '" + Quote.of(value) + "'");
    }
  }
}
