package org.thumbseal.daemon;

import java.time.Instant;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import org.jspecify.annotations.Nullable;
import org.thumbseal.archive.Archive;
import org.thumbseal.capture.Capture;
import org.thumbseal.capture.CaptureLine;
import org.thumbseal.json.ResultTree;
import org.thumbseal.phase.Phase;
import org.thumbseal.phase.PhaseEvent;
import org.thumbseal.pipeline.Grader;
import org.thumbseal.pipeline.GradingSettings;
import org.thumbseal.pipeline.KnownPumps;
import org.thumbseal.pipeline.LiveListener;
import org.thumbseal.pipeline.LiveStream;
import org.thumbseal.record.ResultDocument;
import org.thumbseal.sample.StreamEvent;
import org.thumbseal.sample.StreamEvent.KeyPressed;
import org.thumbseal.sample.StreamEvent.Start;
import org.thumbseal.seal.Sha256;
import org.thumbseal.visit.SaidStart;
import org.thumbseal.visit.StartedBy;
import org.thumbseal.visit.Visit;

/**
 * Grades and stores the tests of one port, session after session. What is under way is on the disk
 * all the time: see {@link InterruptedCaptures} for what becomes of it after a power cut.
 *
 * <p>Lines come from one thread, what people say from others; one lock makes them one after
 * another, so that what is said has its place among the lines.
 */
public final class TestRecorder implements SessionHandler, PortDesk {
  static final String UNNAMED = "capture.log";

  private final String port;
  private final ResultStore store;
  private final BenchListener listener;
  private final OpenRecording recording;
  private final BenchSayings sayings;
  private Instant openedAt = Instant.EPOCH;
  private String openedAs = "";
  private final Set<String> missed = new HashSet<>();
  private Told told;
  private boolean pumpOn;
  private @Nullable LiveStream live;

  /** What the listener knows. */
  private record Told(Visit visit, Optional<Start> start, KnownPumps pumps) {}

  /**
   * Makes a recorder for a port.
   *
   * @param port its address
   * @param settings what the user said about the tests
   * @param store takes the results
   * @param listener is told
   */
  public TestRecorder(
      String port, GradingSettings settings, ResultStore store, BenchListener listener) {
    this.port = port;
    this.sayings = new BenchSayings(settings);
    this.told = new Told(Visit.NONE, Optional.empty(), settings.pumps());
    this.store = store;
    this.listener = listener;
    this.recording = store.recording(port);
  }

  @Override
  public synchronized void opened(Instant wallClock, String source) {
    openedAt = wallClock;
    openedAs = source;
    sayings.renew(listener::notice);
    LiveStream stream = new LiveStream(sayings.header(wallClock, source), new Seen());
    live = stream;
    listener.opened(port, wallClock, stream);
    recording.begin(stream);
    tellSayings();
  }

  @Override
  public synchronized void line(long hostMicros, String line) {
    LiveStream stream = live;
    if (stream != null) {
      store.health().heard(sayings.settings().sensor().lineFormat().decode(line));
      stream.accept(hostMicros, line);
      recording.tick(hostMicros);
      forgetStart(stream);
      testsBegin(stream);
      tellSayings();
      listener.line(port, hostMicros);
    }
  }

  @Override
  public synchronized void quiet(long hostMicros) {
    recording.tick(hostMicros);
  }

  @Override
  public void lost(long hostMicros, long lines) {
    store.health().dropped(lines);
    listener.dropped(port, lines);
    listener.notice(
        port + ": " + lines + " lines were lost: this computer is too slow at the moment");
  }

  @Override
  public synchronized void closed(long hostMicros, String why) {
    LiveStream stream = live;
    live = null;
    if (stream != null) {
      stream.end();
      recording.end();
      sayings.noStart();
      tellSayings();
      listener.closed(port);
    }
  }

  @Override
  public String port() {
    return port;
  }

  @Override
  public synchronized void visit(Visit visit) {
    renew();
    Visit before = sayings.visit();
    sayings.visit(visit);
    if (!sayings.visit().equals(before)) {
      writeSayings();
    }
    tellSayings();
  }

  @Override
  public synchronized Optional<StartRefusal> start(StartedBy by, Optional<String> asset) {
    renew();
    asset.ifPresent(id -> visit(sayings.visit().withAsset(id)));
    LiveStream stream = live;
    if (stream != null && sayings.visit().forbidsMains()) {
      return Optional.of(StartRefusal.MAINS_FORBIDDEN);
    } else if (stream != null && stream.isBlocked()) {
      return Optional.of(StartRefusal.TEST_RUNNING);
    }
    Optional<SaidStart> said = Optional.ofNullable(stream).flatMap(open -> open.start(by));
    said.ifPresent(sayings::start);
    said.ifPresent(start -> writeSayings());
    tellSayings();
    return said.isPresent() ? Optional.empty() : Optional.of(StartRefusal.NOT_CONNECTED);
  }

  @Override
  public synchronized Optional<StartRefusal> seek(Optional<String> asset) {
    if (asset.isPresent() && sayings.visit().forbidsMains()) {
      return Optional.of(StartRefusal.MAINS_FORBIDDEN);
    } else if (isWithinTest()) {
      return Optional.of(StartRefusal.TEST_RUNNING);
    }
    sayings.seek(asset);
    sayings.visit(Visit.NONE);
    writeSayings();
    tellSayings();
    return Optional.empty();
  }

  private boolean isWithinTest() {
    LiveStream stream = live;
    return stream != null && (stream.isBusy() || stream.isBlocked());
  }

  /** Where nobody says that a test begins, the pump that is switched on does. */
  private void testsBegin(LiveStream stream) {
    if (pumpOn && !stream.isBusy()) {
      pumpOn = false;
      renew();
    }
  }

  /** What is known of pumps changes between tests, never within one. */
  private void renew() {
    if (!isWithinTest() && sayings.renew(listener::notice)) {
      writeSayings();
    }
  }

  /** One that ended without a test, for the sensor began anew, must not begin one in a replay. */
  private void forgetStart(LiveStream stream) {
    if (sayings.hasStart() && stream.waiting().isEmpty() && !stream.isBusy()) {
      sayings.noStart();
      writeSayings();
    }
  }

  /** The record begins with what was said, so it is begun anew. */
  private void writeSayings() {
    LiveStream stream = live;
    if (stream != null) {
      stream.header(sayings.header(openedAt, openedAs));
      recording.cut();
    }
  }

  private void tellSayings() {
    LiveStream stream = live;
    KnownPumps pumps = sayings.settings().pumps();
    Optional<Start> waiting = stream == null ? Optional.empty() : stream.waiting();
    Told now = new Told(sayings.visit(), waiting, pumps);
    if (!now.equals(told)) {
      if (!pumps.equals(told.pumps())) {
        listener.pumps(port, pumps);
      }
      told = now;
      double left = stream == null ? 0 : stream.secondsLeft();
      Optional<StartedBy> by = now.start().map(this::by);
      listener.visit(port, now.visit(), by.map(who -> new Started(who, left)));
      remarkUnknown(now);
    }
  }

  private void remarkUnknown(Told now) {
    now.visit()
        .asset()
        .filter(id -> now.pumps().misses(id) && missed.add(id))
        .ifPresent(
            id ->
                listener.notice(
                    port + ": " + id + " is not in the register; it is tested all the same"));
  }

  private StartedBy by(Start start) {
    return start instanceof KeyPressed ? StartedBy.KEY : sayings.startedBy();
  }

  /** Follows the stream. */
  private final class Seen implements LiveListener {
    @Override
    public void phase(PhaseEvent.Entered phase) {
      listener.phase(port, phase);
      pumpOn |= phase.phase() == Phase.OPEN;
      recording.force();
    }

    @Override
    public void event(StreamEvent event) {
      listener.reading(port, event);
    }

    @Override
    public void added(CaptureLine line) {
      recording.added(line);
    }

    /** The heap of a small computer holds a few whole captures with what grading needs, not all. */
    @Override
    public void unfold(Runnable work) {
      synchronized (store.unfolding()) {
        work.run();
      }
    }

    @Override
    public void test(Capture capture) {
      recording.force();
      boolean stored = false;
      try {
        stored = isStored(capture);
      } finally {
        if (!stored) {
          recording.leave();
        }
      }
    }

    @Override
    public void cut() {
      writeSayings();
    }
  }

  private boolean isStored(Capture capture) {
    byte[] bytes = capture.format();
    Grader.Source source = Grader.Source.capture(UNNAMED, Sha256.hex(bytes));
    List<ResultDocument> results =
        Grader.grade(capture, source, sayings.settings().forPumpOf(capture.header()));
    results.forEach(result -> listener.graded(port, result));
    if (results.isEmpty()) {
      listener.notice(
          port + ": " + "something like a test was seen, but it is none on a second look");
    }
    sayings.graded(results);
    var origin = new Unsaved.Origin(port, recording.file(), recording.isWhole());
    return store.take(new Unsaved(origin, named(results), bytes));
  }

  /** The name of the stored capture has the verdict in it, so it comes after the grading. */
  static List<ResultDocument> named(List<ResultDocument> results) {
    return results.stream()
        .map(result -> result.withCapture(Archive.captureName(ResultTree.of(result))))
        .toList();
  }
}
