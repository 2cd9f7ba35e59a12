package org.thumbseal.daemon;

import java.time.Instant;
import java.time.temporal.ChronoUnit;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.jspecify.annotations.Nullable;
import org.thumbseal.archive.Archive;
import org.thumbseal.capture.Capture;
import org.thumbseal.capture.CaptureHeader;
import org.thumbseal.capture.CaptureLine;
import org.thumbseal.json.ResultTree;
import org.thumbseal.phase.PhaseEvent;
import org.thumbseal.pipeline.Grader;
import org.thumbseal.pipeline.GradingSettings;
import org.thumbseal.pipeline.LiveListener;
import org.thumbseal.pipeline.LiveStream;
import org.thumbseal.record.ResultDocument;
import org.thumbseal.sample.StreamEvent;
import org.thumbseal.seal.Sha256;

/**
 * Grades and stores the tests of one port, session after session. What is under way is on the disk
 * all the time: see {@link InterruptedCaptures} for what becomes of it after a power cut.
 */
public final class TestRecorder implements SessionHandler {
  static final String UNNAMED = "capture.log";

  private final String port;
  private final GradingSettings settings;
  private final ResultStore store;
  private final BenchListener listener;
  private final OpenRecording recording;
  private @Nullable LiveStream live;

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
    this.settings = settings;
    this.store = store;
    this.listener = listener;
    this.recording = store.recording(port);
  }

  @Override
  public void opened(Instant wallClock, String source) {
    LiveStream stream = new LiveStream(header(wallClock, source), new Seen());
    live = stream;
    listener.opened(port, wallClock, stream);
    recording.begin(stream);
  }

  /** All that the user said goes into the capture, so that a replay needs no options. */
  private CaptureHeader header(Instant wallClock, String source) {
    Instant millis = wallClock.truncatedTo(ChronoUnit.MILLIS);
    Map<String, String> facts = new LinkedHashMap<>();
    facts.put("source", source);
    settings.asset().ifPresent(asset -> facts.put("asset", asset));
    settings.ambientKilopascals().ifPresent(v -> facts.put("ambient-kpa", v.toString()));
    settings.altitudeMetres().ifPresent(v -> facts.put("altitude-m", v.toString()));
    settings.jarLitres().ifPresent(v -> facts.put("jar-l", v.toString()));
    if (settings.pinched()) {
      facts.put("pinched", "true");
    }
    return new CaptureHeader(millis, facts);
  }

  @Override
  public void line(long hostMicros, String line) {
    LiveStream stream = live;
    if (stream != null) {
      store.health().heard(line);
      stream.accept(hostMicros, line);
      recording.tick(hostMicros);
      listener.line(port, hostMicros);
    }
  }

  @Override
  public void quiet(long hostMicros) {
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
  public void closed(long hostMicros, String why) {
    LiveStream stream = live;
    live = null;
    if (stream != null) {
      stream.end();
      recording.end();
      listener.closed(port);
    }
  }

  /** Follows the stream. */
  private final class Seen implements LiveListener {
    @Override
    public void phase(PhaseEvent.Entered phase) {
      listener.phase(port, phase);
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
      recording.cut();
    }
  }

  private boolean isStored(Capture capture) {
    byte[] bytes = capture.format();
    Grader.Source source = Grader.Source.capture(UNNAMED, Sha256.hex(bytes));
    List<ResultDocument> results = Grader.grade(capture, source, settings);
    results.forEach(result -> listener.graded(port, result));
    if (results.isEmpty()) {
      listener.notice(
          port + ": " + "something like a test was seen, but it is none on a second look");
    }
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
