package org.thumbseal.pipeline;

import java.time.Instant;
import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Deque;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.thumbseal.capture.Capture;
import org.thumbseal.capture.CaptureHeader;
import org.thumbseal.capture.CaptureLine;
import org.thumbseal.measurement.AmbientPressure;
import org.thumbseal.phase.PhaseDetector;
import org.thumbseal.phase.PhaseEvent;
import org.thumbseal.sample.SampleStream;
import org.thumbseal.sample.StreamEvent;
import org.thumbseal.sample.StreamEvent.KeyPressed;
import org.thumbseal.sample.StreamEvent.Start;
import org.thumbseal.visit.SaidStart;
import org.thumbseal.visit.StartedBy;
import org.thumbseal.wire.Decoded;
import org.thumbseal.wire.LineDecoder;
import org.thumbseal.wire.RejectCause;
import org.thumbseal.wire.WireRecord;

/**
 * One opening of a port as it happens: tells the phases at once, and cuts out a capture for each
 * test.
 *
 * <p>A result is never graded from what was seen live, but from the capture, as a replay does: so
 * both give the same answer. Between tests only the last minute of lines is kept; what is older
 * goes in blocks, so that a file can follow without being written anew for every line.
 */
public final class LiveStream {
  /** Lines kept before a test, s: enough for a quiet start and an open phase. */
  static final double KEPT_BEFORE = 60;

  /** Lines are forgotten when they reach back further than this, s. */
  static final double LONGEST_KEPT = 90;

  /** A result must not wait; the rest of the release says nothing that is graded. */
  private static final double TAIL = 0;

  /** The fall after a test is part of the next capture, so that a blocking on top of it shows. */
  private static final double KEPT_AFTER = 1.5;

  private static final double MICROS = 1e6;

  private final LiveListener listener;
  private final PhaseDetector detector = new PhaseDetector(TAIL, this::note);
  private final SampleStream stream;
  private final StartFeed feed;
  private final PackedLines lines = new PackedLines();
  private final KeptLines kept = new KeptLines();
  private CaptureHeader header;
  private long lastKeyMicros = -1;
  private boolean tested;
  private boolean blocked;

  /**
   * Begins a stream.
   *
   * @param header for the captures
   * @param listener is told of phases and tests
   */
  public LiveStream(CaptureHeader header, LiveListener listener) {
    this.header = header;
    this.listener = listener;
    this.stream = new SampleStream(header.lineFormat(), this::take);
    this.feed = new StartFeed(stream, header);
  }

  /** Takes the next line: host time in microseconds and the text without its end. */
  public void accept(long hostMicros, String text) {
    CaptureLine line = new CaptureLine(hostMicros, text);
    lines.add(line);
    listener.added(line);
    feed.accept(hostMicros, text);
    handOut();
    long needed = Math.min(hostMicros, startedMicros());
    if (!detector.isBusy() && isLong(needed)) {
      cutBefore(needed - Math.round(KEPT_BEFORE * MICROS));
    }
  }

  /** The record must hold the start that waits for its blocking. */
  private long startedMicros() {
    return detector.start().map(LiveStream::hostMicros).orElse(Long.MAX_VALUE);
  }

  private static long hostMicros(Start start) {
    return Math.round(start.hostSeconds() * MICROS);
  }

  private boolean isLong(long hostMicros) {
    return hostMicros - lines.firstMicros() > LONGEST_KEPT * MICROS;
  }

  /**
   * Says that a test begins, now: after the last line that came. It is for the caller to have it in
   * the header too, so that a replay finds it.
   *
   * @return what goes into the header; absent where there is no sample yet
   */
  public Optional<SaidStart> start(StartedBy by) {
    if (!detector.hasBegun()) {
      return Optional.empty();
    }
    SaidStart said = new SaidStart(lines.lastMicros(), by);
    stream.startSaid(said.hostMicros());
    return Optional.of(said);
  }

  /** The start that waits for the inlet to be blocked. */
  public Optional<Start> waiting() {
    return detector.start();
  }

  /** How long that one may wait from now on, s; 0 where there is none. */
  public double secondsLeft() {
    return detector
        .start()
        .map(start -> PhaseDetector.START_PATIENCE - (detector.seconds() - start.seconds()))
        .orElse(0.0);
  }

  /** Whether the inlet is known to be blocked. */
  public boolean isBlocked() {
    return detector.isBlocked();
  }

  /** Whether the vacuum climbs, if only a little: nobody knows yet what it will be. */
  public boolean isBusy() {
    return detector.isBusy();
  }

  /** What is known has changed; {@link #capture} begins with this from now on. */
  public void header(CaptureHeader known) {
    header = known;
  }

  /** What would be handed out if a test ended now. */
  public Capture capture() {
    List<CaptureLine> all = new ArrayList<>(kept.lines());
    all.addAll(lines.all());
    return new Capture(header, all, 0);
  }

  /** Who the sensor said it is, last. */
  public Optional<WireRecord.Identity> identity() {
    return stream.identity();
  }

  /** The ambient pressure that a test would be graded with now. */
  public Optional<AmbientPressure> ambient(GradingSettings settings) {
    return Facts.ambient(settings, header, stream.ambient());
  }

  /** The ambient pressure that is known without a sensor. */
  public static Optional<AmbientPressure> ambientBefore(GradingSettings settings) {
    return Facts.ambient(settings, new CaptureHeader(Instant.EPOCH, Map.of()), Optional.empty());
  }

  /** Lines and readings left out so far, by cause. */
  public Map<RejectCause, Integer> rejected() {
    return stream.rejected();
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

  private void take(StreamEvent event) {
    listener.event(event);
    if (event instanceof KeyPressed key) {
      lastKeyMicros = hostMicros(key);
    }
    detector.accept(event);
  }

  private void note(PhaseEvent event) {
    if (event instanceof PhaseEvent.Entered entered) {
      listener.phase(entered);
    } else {
      tested = true;
      blocked = event instanceof PhaseEvent.Tested;
    }
  }

  /**
   * The cut comes last: whoever stores the test does so while the open capture is still whole. A
   * key that was pressed during a test belongs to it; without the test around it, it would begin
   * another. Where the inlet was not blocked, what came before the pump was switched on is still of
   * use.
   */
  private void handOut() {
    if (tested) {
      tested = false;
      listener.unfold(() -> listener.test(capture()));
      double kept = blocked ? KEPT_AFTER : KEPT_BEFORE;
      long from = lines.lastMicros() - Math.round(kept * MICROS);
      cutBefore(blocked ? Math.max(from, lastKeyMicros + 1) : from);
    }
  }

  private void cutBefore(long hostMicros) {
    while (!lines.isEmpty() && lines.firstMicros() < hostMicros) {
      kept.add(lines.removeFirst());
    }
    listener.cut();
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
