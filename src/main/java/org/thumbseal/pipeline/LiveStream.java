package org.thumbseal.pipeline;

import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Deque;
import java.util.List;
import java.util.function.Consumer;
import org.thumbseal.capture.Capture;
import org.thumbseal.capture.CaptureHeader;
import org.thumbseal.capture.CaptureLine;
import org.thumbseal.phase.PhaseDetector;
import org.thumbseal.phase.PhaseEvent;
import org.thumbseal.sample.SampleStream;
import org.thumbseal.wire.Decoded;
import org.thumbseal.wire.LineDecoder;
import org.thumbseal.wire.WireRecord;

/**
 * One opening of a port as it happens: tells the phases at once, and cuts out a capture for each
 * test.
 *
 * <p>A result is never graded from what was seen live, but from the capture, as a replay does: so
 * both give the same answer. Between tests only the last minute of lines is kept.
 */
public final class LiveStream {
  /** Lines kept before a test, s: enough for a quiet start and an open phase. */
  static final double KEPT_BEFORE = 60;

  /** A result must not wait; the rest of the release says nothing that is graded. */
  private static final double TAIL = 0;

  /** The fall after a test is part of the next capture, so that a blocking on top of it shows. */
  private static final double KEPT_AFTER = 1.5;

  private static final double MICROS = 1e6;

  private final CaptureHeader header;
  private final Consumer<PhaseEvent.Entered> phases;
  private final Consumer<Capture> tests;
  private final PhaseDetector detector = new PhaseDetector(TAIL, this::note);
  private final SampleStream stream = new SampleStream(detector::accept);
  private final Deque<CaptureLine> lines = new ArrayDeque<>();
  private final KeptLines kept = new KeptLines();
  private boolean tested;

  /**
   * Begins a stream.
   *
   * @param header for the captures
   * @param phases takes each new phase
   * @param tests takes the capture of each test as soon as it has ended
   */
  public LiveStream(
      CaptureHeader header, Consumer<PhaseEvent.Entered> phases, Consumer<Capture> tests) {
    this.header = header;
    this.phases = phases;
    this.tests = tests;
  }

  /** Takes the next line: host time in microseconds and the text without its end. */
  public void accept(long hostMicros, String text) {
    lines.addLast(new CaptureLine(hostMicros, text));
    stream.accept(hostMicros, text);
    handOut();
    if (!detector.isBusy()) {
      forgetBefore(hostMicros - Math.round(KEPT_BEFORE * MICROS));
    }
  }

  /** Says that the port is closed: an open test ends here. */
  public void end() {
    stream.end();
    detector.end();
    handOut();
  }

  /** Number of lines in memory. */
  int linesKept() {
    return lines.size();
  }

  private void note(PhaseEvent event) {
    if (event instanceof PhaseEvent.Entered entered) {
      phases.accept(entered);
    } else {
      tested = true;
    }
  }

  private void handOut() {
    if (tested) {
      tested = false;
      List<CaptureLine> all = new ArrayList<>(kept.lines());
      all.addAll(lines);
      forgetBefore(lines.getLast().hostMicros() - Math.round(KEPT_AFTER * MICROS));
      tests.accept(new Capture(header, all, 0));
    }
  }

  private void forgetBefore(long hostMicros) {
    while (!lines.isEmpty() && lines.getFirst().hostMicros() < hostMicros) {
      kept.add(lines.removeFirst());
    }
  }

  /** The newest lines about sensor and air among those forgotten; a capture begins with them. */
  private static final class KeptLines {
    private final Deque<CaptureLine> identity = new ArrayDeque<>(1);
    private final Deque<CaptureLine> ambient = new ArrayDeque<>(1);

    void add(CaptureLine line) {
      Decoded decoded = LineDecoder.decode(line.text());
      if (decoded instanceof Decoded.Good good) {
        if (good.content() instanceof WireRecord.Identity) {
          replace(identity, line);
        } else if (good.content() instanceof WireRecord.Ambient) {
          replace(ambient, line);
        }
      }
    }

    private static void replace(Deque<CaptureLine> place, CaptureLine line) {
      place.clear();
      place.add(line);
    }

    List<CaptureLine> lines() {
      List<CaptureLine> lines = new ArrayList<>(identity);
      lines.addAll(ambient);
      lines.sort(java.util.Comparator.comparingLong(CaptureLine::hostMicros));
      return lines;
    }
  }
}
