package org.thumbseal.capture;

import java.time.Instant;
import java.time.format.DateTimeFormatter;
import java.time.format.DateTimeFormatterBuilder;
import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Optional;
import org.thumbseal.wire.LineFormat;
import org.thumbseal.wire.LineFormatException;
import org.thumbseal.wire.PlainLines;

/**
 * The head of a capture file: what was known when it was started.
 *
 * @param started wall clock at host time zero
 * @param facts the other header lines by key, in order: {@code source}, {@code asset}, {@code
 *     ambient-kpa}, {@code jar-l}, {@code rated-l-min} and what else there may be
 */
public record CaptureHeader(Instant started, Map<String, String> facts) {
  /** Key of the header line that says how the lines are written. */
  public static final String FORMAT = "format";

  /** Key of the header line with the pumping speed that the pump's papers promise, L/min. */
  public static final String RATED_SPEED = "rated-l-min";

  /** Key of the header line that names the pump whose leak is sought, in a test of a search. */
  public static final String LEAK_SEARCH = "leak-search";

  static final String MAGIC = "# thumbseal capture 1";

  private static final DateTimeFormatter MILLIS =
      new DateTimeFormatterBuilder().appendInstant(3).toFormatter();

  /** Keeps a copy of the facts, each made fit for one line of a file. */
  public CaptureHeader {
    Map<String, String> lines = new LinkedHashMap<>();
    facts.forEach((key, value) -> lines.put(word(key), oneLine(value)));
    facts = Collections.unmodifiableMap(lines);
  }

  /** The value of a header line, if it is there. */
  public Optional<String> fact(String key) {
    return Optional.ofNullable(facts.get(key));
  }

  /**
   * How the lines are written, by the header line {@code format}; without one, wire protocol 1.
   *
   * @throws IllegalStateException if it cannot be used; {@link CaptureReader} has seen to it for
   *     every header that comes from a file
   */
  public LineFormat lineFormat() {
    try {
      return parsedFormat();
    } catch (LineFormatException e) {
      throw new IllegalStateException(e);
    }
  }

  LineFormat parsedFormat() throws LineFormatException {
    Optional<String> text = fact(FORMAT);
    return text.isPresent() ? PlainLines.parse(text.get()) : LineFormat.PROTOCOL_1;
  }

  /** A header with one more line, or another value of it. */
  public CaptureHeader with(String key, String value) {
    Map<String, String> more = new LinkedHashMap<>(facts);
    more.put(key, value);
    return new CaptureHeader(started, more);
  }

  /** The lines of the file, each ended by LF. */
  public String format() {
    StringBuilder out = new StringBuilder(MAGIC).append('\n');
    append(out, "started", MILLIS.format(started));
    facts.forEach((key, value) -> append(out, key, value));
    return out.toString();
  }

  private static String word(String key) {
    return key.strip().replaceAll("[\\p{Cntrl}\\s]+", "-");
  }

  private static String oneLine(String value) {
    return value.replaceAll("\\p{Cntrl}+", " ").strip();
  }

  private static void append(StringBuilder out, String key, String value) {
    out.append("# ").append(key).append(' ').append(value).append('\n');
  }
}
