package org.thumbseal.capture;

import java.io.BufferedInputStream;
import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.time.DateTimeException;
import java.time.Instant;
import java.time.OffsetDateTime;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Consumer;
import org.thumbseal.wire.LineFormatException;

/**
 * Reads a capture file line by line, in bounded memory; one that was cut off anywhere is read up to
 * its last whole line.
 */
public final class CaptureReader {
  private static final int LONGEST_LINE = 2_048;
  private static final int MOST_FACTS = 100;

  /** RFC 3339 has four digits for the year. */
  private static final int LAST_YEAR = 9_999;

  private static final String MAGIC = CaptureHeader.MAGIC;
  private static final byte[] BEGIN = "# thumbseal capture".getBytes(StandardCharsets.US_ASCII);

  private final WholeLines lines;
  private final Map<String, String> facts = new LinkedHashMap<>();
  private Optional<Instant> started = Optional.empty();
  private Optional<String> pending = Optional.empty();
  private int unreadable;

  private CaptureReader(InputStream in) {
    this.lines = new WholeLines(new BufferedInputStream(in, 1 << 16), LONGEST_LINE);
  }

  /** How many bytes {@link #looksLikeCapture} wants to see. */
  public static int sniffedBytes() {
    return BEGIN.length;
  }

  /** Whether these bytes begin like a capture file of any version. */
  public static boolean looksLikeCapture(byte[] bytes) {
    return bytes.length >= BEGIN.length
        && Arrays.equals(BEGIN, 0, BEGIN.length, bytes, 0, BEGIN.length);
  }

  /**
   * Reads the bytes of a whole capture file.
   *
   * @throws CaptureFormatException if it is no capture, or of a version this program does not know
   */
  public static Capture read(byte[] bytes) throws CaptureFormatException {
    try {
      CaptureReader reader = open(new ByteArrayInputStream(bytes));
      List<CaptureLine> all = new ArrayList<>();
      reader.forEachLine(all::add);
      return new Capture(reader.header(), all, reader.unreadable());
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  /**
   * Reads the header; the lines follow with {@link #forEachLine}.
   *
   * @throws CaptureFormatException if it is no capture, or of a version this program does not know
   */
  public static CaptureReader open(InputStream in) throws IOException, CaptureFormatException {
    CaptureReader reader = new CaptureReader(in);
    reader.readHeader();
    return reader;
  }

  /** What was known when the capture was started. */
  public CaptureHeader header() {
    return new CaptureHeader(started.orElse(Instant.EPOCH), facts);
  }

  /** Hands on every line that can be read, in order; may be called once. */
  public void forEachLine(Consumer<CaptureLine> taker) throws IOException {
    for (Optional<String> text = pending; text.isPresent(); text = lines.next()) {
      CaptureLine.parse(text.get()).ifPresentOrElse(taker, () -> unreadable++);
    }
    pending = Optional.empty();
  }

  /** Lines so far that are no capture lines. */
  public int unreadable() {
    return unreadable;
  }

  private void readHeader() throws IOException, CaptureFormatException {
    String first = lines.next().orElse("");
    if (!first.startsWith("# thumbseal capture")) {
      throw new CaptureFormatException("not a capture file (first line is not '" + MAGIC + "')");
    }
    if (!first.strip().equals(MAGIC)) {
      throw new CaptureFormatException(
          "capture version not known: '"
              + Quote.of(first)
              + "'; this program reads '"
              + MAGIC
              + "'");
    }
    pending = lines.next();
    while (pending.isPresent() && pending.get().startsWith("# ")) {
      readFact(pending.get().substring(2).strip());
      pending = lines.next();
    }
    if (started.isEmpty() && pending.isPresent()) {
      throw new CaptureFormatException(
          "capture without a '# started <time>' line: add one, such as '# started"
              + " 2026-03-02T07:15:00Z', so that its tests have a date");
    }
    requireKnownFormat();
  }

  private void requireKnownFormat() throws CaptureFormatException {
    try {
      header().parsedFormat();
    } catch (LineFormatException e) {
      throw new CaptureFormatException("header line: " + e.getMessage());
    }
  }

  private void readFact(String fact) throws CaptureFormatException {
    int space = fact.indexOf(' ');
    String key = space < 0 ? fact : fact.substring(0, space);
    String value = space < 0 ? "" : fact.substring(space + 1).strip();
    if (key.equals("started")) {
      started = Optional.of(started.isPresent() ? started.get() : instant(value));
    } else if (!key.isEmpty() && facts.size() < MOST_FACTS) {
      facts.putIfAbsent(key, value);
    }
  }

  private static Instant instant(String value) throws CaptureFormatException {
    try {
      OffsetDateTime time = OffsetDateTime.parse(value);
      if (time.getYear() < 0 || time.getYear() > LAST_YEAR) {
        throw new DateTimeException("not four digits");
      }
      return time.toInstant();
    } catch (DateTimeException e) {
      throw new CaptureFormatException(
          "header line 'started' is not an RFC 3339 time: '" + Quote.of(value) + "'");
    }
  }
}
