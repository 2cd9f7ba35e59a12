package org.thumbseal.sample;

import java.util.EnumMap;
import java.util.Map;
import java.util.Optional;
import java.util.function.Consumer;
import org.jspecify.annotations.Nullable;
import org.thumbseal.sample.StreamEvent.KeyPressed;
import org.thumbseal.sample.StreamEvent.SensorFault;
import org.thumbseal.sample.StreamEvent.StartSaid;
import org.thumbseal.wire.Decoded;
import org.thumbseal.wire.LineFormat;
import org.thumbseal.wire.RejectCause;
import org.thumbseal.wire.WireRecord;
import org.thumbseal.wire.WireRecord.Ambient;
import org.thumbseal.wire.WireRecord.Fault;
import org.thumbseal.wire.WireRecord.Identity;
import org.thumbseal.wire.WireRecord.Plain;
import org.thumbseal.wire.WireRecord.Reading;
import org.thumbseal.wire.WireRecord.StartKey;

/** Turns lines into events on one growing device clock, and counts what it had to leave out. */
public final class SampleStream {
  private static final double MICROS = 1e6;

  private final Consumer<StreamEvent> events;
  private final Map<RejectCause, Integer> rejected = new EnumMap<>(RejectCause.class);
  private final ReadingSequence sequence;
  private final LineFormat format;
  private final Optional<PlainSequence> plain;
  private @Nullable Identity identity;
  private @Nullable Ambient ambient;
  private boolean anyLine;

  /** Makes a stream of the wire protocol that hands on its events in order. */
  public SampleStream(Consumer<StreamEvent> events) {
    this(LineFormat.PROTOCOL_1, events);
  }

  /** Makes a stream of lines of any format that hands on its events in order. */
  public SampleStream(LineFormat format, Consumer<StreamEvent> events) {
    Runnable implausible = () -> count(RejectCause.IMPLAUSIBLE);
    this.events = events;
    this.format = format;
    this.sequence = new ReadingSequence(events, implausible);
    this.plain = format.plain().map(lines -> new PlainSequence(lines, events, implausible));
  }

  /**
   * Takes the next line.
   *
   * @param hostMicros arrival on the host's monotonic clock, microseconds
   * @param line the line without its end, one character a byte
   */
  public void accept(long hostMicros, String line) {
    Decoded decoded = format.decode(line);
    boolean perhapsHalf = plain.isPresent() && !anyLine; // nothing tells half a line from a whole
    if (decoded instanceof Decoded.Good good && !perhapsHalf) {
      take(hostMicros, good.content());
    } else if (decoded instanceof Decoded.Rejected bad && anyLine) {
      count(bad.cause());
    }
    anyLine = true; // the first line after opening a port may be half a line: no error
  }

  /** A start was said to the host; before the first sample it is of another record. */
  public void startSaid(long hostMicros) {
    if (plain.map(PlainSequence::hasBegun).orElseGet(sequence::hasBegun)) {
      double now = plain.map(PlainSequence::now).orElseGet(sequence::now);
      events.accept(new StartSaid(now, hostMicros / MICROS));
    }
  }

  /** Says that no more lines follow, so that nothing is held back any longer. */
  public void end() {
    plain.ifPresent(PlainSequence::end);
    sequence.end();
  }

  /** Who the sensor said it is, last. */
  public Optional<Identity> identity() {
    return Optional.ofNullable(identity);
  }

  /** The newest ambient record with a pressure in it. */
  public Optional<Ambient> ambient() {
    return Optional.ofNullable(ambient);
  }

  /** Lines and readings left out so far, by cause. */
  public Map<RejectCause, Integer> rejected() {
    return new EnumMap<>(rejected);
  }

  private void take(long hostMicros, WireRecord content) {
    if (content instanceof Reading reading) {
      sequence.accept(new ReadingSequence.Arrived(reading, hostMicros));
    } else if (content instanceof Plain reading) {
      plain.ifPresent(p -> p.accept(hostMicros, reading));
    } else if (content instanceof Identity said) {
      identity = said;
      sequence.nominalRate(said.hertz());
    } else if (content instanceof Ambient said && said.pascals().isPresent()) {
      ambient = said;
    } else if (content instanceof Fault fault) {
      events.accept(new SensorFault(sequence.now(), fault.code()));
    } else if (content instanceof StartKey key && key.pressed()) {
      events.accept(new KeyPressed(sequence.now(), hostMicros / MICROS));
    }
  }

  private void count(RejectCause cause) {
    rejected.merge(cause, 1, Integer::sum);
  }
}
