package org.thumbseal.daemon;

import java.time.Duration;
import java.time.Instant;
import java.util.EnumSet;
import java.util.Optional;
import java.util.Set;
import java.util.function.BooleanSupplier;
import java.util.function.Consumer;
import java.util.regex.Pattern;
import org.thumbseal.link.Link;
import org.thumbseal.link.LinkConnection;
import org.thumbseal.wire.Decoded;
import org.thumbseal.wire.LineAssembler;
import org.thumbseal.wire.WireRecord;

/**
 * Reads one connection until it is lost, ends, falls silent or is told to stop.
 *
 * <p>What comes during the settle time of the link is thrown away. Of a port, what comes before the
 * first good line is left out too: the end of a line that was begun before, or what a board says
 * while it starts. Every other line is handed on, good or not.
 */
final class PortSession {
  private static final int BUFFER = 4_096;

  /** What a modem service tries a new port with, where the other end sends it back. */
  private static final Pattern MODEM_COMMAND = Pattern.compile("AT([+&%^#EIQVXZ].*)?");

  private final Link link;
  private final LineQueue queue;
  private final Surroundings surroundings;
  private final Consumer<Impression> report;
  private final Silence silence;
  private final SharedPort shared = new SharedPort();
  private final Set<Impression> reported = EnumSet.noneOf(Impression.class);
  private final LineAssembler assembler = new LineAssembler(this::line);
  private final long openedNanos;
  private final long settleMicros;

  private long micros;
  private long lastGoodMicros;
  private long bytes;
  private boolean anyGood;
  private boolean lineInThisRead;

  /**
   * Begins host time.
   *
   * @param report is told, without the name of the link, when a sensor is heard or is not
   */
  PortSession(Link link, LineQueue queue, Surroundings surroundings, Consumer<Impression> report) {
    this.link = link;
    this.queue = queue;
    this.surroundings = surroundings;
    this.report = report;
    this.silence = new Silence(link, surroundings.limits().silence());
    this.settleMicros = link.settle().toNanos() / 1_000;
    this.openedNanos = surroundings.clock().nanos();
  }

  /** Whether a good line has come. */
  boolean heard() {
    return anyGood;
  }

  /** Reads to the end of the session, and tells the handler that it is closed. */
  SessionEnd read(LinkConnection connection, BooleanSupplier stopping) {
    SessionEnd end = SessionEnd.FAULT;
    Instant zero = surroundings.clock().wall().minus(connection.age());
    queue.put(new Happening.Opened(zero, link.name()));
    try {
      end = readOn(connection, stopping);
      return end;
    } finally {
      queue.putClosed(micros, end.why());
    }
  }

  private SessionEnd readOn(LinkConnection connection, BooleanSupplier stopping) {
    byte[] buffer = new byte[BUFFER];
    Optional<SessionEnd> end = Optional.empty();
    while (end.isEmpty()) {
      int count = connection.read(buffer);
      micros = Math.max(micros, connection.arrivedMicros().orElseGet(this::elapsedMicros));
      if (stopping.getAsBoolean()) {
        return SessionEnd.STOPPED;
      }
      end = count == LinkConnection.LOST ? Optional.of(lost()) : take(buffer, count);
    }
    return end.get();
  }

  private SessionEnd lost() {
    if (link.finite()) {
      if (bytes > 0 && !anyGood) {
        reportOnce(Impression.NO_SENSOR);
      }
      return SessionEnd.INPUT_ENDED;
    }
    return Shutdown.inProgress()
        ? SessionEnd.STOPPED
        : SessionEnd.lost("lost (unplugged or switched off)");
  }

  private long elapsedMicros() {
    return (surroundings.clock().nanos() - openedNanos) / 1_000;
  }

  private Optional<SessionEnd> take(byte[] buffer, int count) {
    lineInThisRead = false;
    shared.read(micros);
    if (micros >= settleMicros) {
      bytes += count;
      assembler.accept(buffer, 0, count);
    }
    if (!lineInThisRead) {
      queue.offerQuiet(micros);
    }
    return link.finite() ? Optional.empty() : judgeSilence();
  }

  private void line(String text) {
    lineInThisRead = true;
    if (surroundings.format().decode(text) instanceof Decoded.Good good) {
      good(good.content());
    } else {
      bad(text);
    }
    if (link.finite()) {
      queue.put(new Happening.Line(micros, text));
    } else if (anyGood) {
      queue.offerLine(micros, text);
    }
  }

  private void good(WireRecord content) {
    lastGoodMicros = micros;
    anyGood = true;
    reportOnce(Impression.SPEAKING);
    if (content instanceof WireRecord.Identity identity) {
      silence.heard(identity);
    } else if (content instanceof WireRecord.Reading reading && link.isPort()) {
      judgeHoles(shared.at(reading.counter()));
    }
  }

  /** A second reader that takes every other line leaves holes like a sensor's own. */
  private void judgeHoles(SharedPort.Sign sign) {
    boolean unsaid = sign == SharedPort.Sign.HOLES && !reported.contains(Impression.SHARED);
    if (sign == SharedPort.Sign.SHARED || (unsaid && link.otherProgram().isPresent())) {
      reportOnce(Impression.SHARED);
    }
  }

  private void bad(String text) {
    shared.broken();
    if (!link.finite() && MODEM_COMMAND.matcher(text).matches()) {
      reportOnce(Impression.MODEM);
    }
  }

  private Optional<SessionEnd> judgeSilence() {
    Duration limit = silence.limit();
    long since = micros - (anyGood ? lastGoodMicros : settleMicros);
    if (since < limit.toNanos() / 1_000) {
      return Optional.empty();
    }
    if (anyGood) {
      return Optional.of(SessionEnd.silent(limit));
    }
    reportOnce(bytes == 0 ? Impression.NOTHING : Impression.NO_SENSOR);
    return Optional.empty();
  }

  private void reportOnce(Impression impression) {
    if (reported.add(impression)) {
      report.accept(impression);
    }
  }
}
