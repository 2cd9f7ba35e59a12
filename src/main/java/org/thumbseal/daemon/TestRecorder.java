package org.thumbseal.daemon;

import java.time.Instant;
import java.time.temporal.ChronoUnit;
import java.util.ArrayDeque;
import java.util.Deque;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.jspecify.annotations.Nullable;
import org.thumbseal.archive.Archive;
import org.thumbseal.archive.ArchiveException;
import org.thumbseal.archive.StoredResult;
import org.thumbseal.capture.Capture;
import org.thumbseal.capture.CaptureHeader;
import org.thumbseal.json.ResultTree;
import org.thumbseal.pipeline.Grader;
import org.thumbseal.pipeline.GradingSettings;
import org.thumbseal.pipeline.LiveStream;
import org.thumbseal.record.ResultDocument;
import org.thumbseal.seal.Sha256;

/** Grades and stores the tests of one port, session after session. */
public final class TestRecorder implements SessionHandler {
  /** Results that wait for the disk to take them; more would not fit a small board. */
  private static final int MOST_WAITING = 50;

  /** The name of the file has the verdict in it, so it comes after the grading. */
  private static final String UNNAMED = "capture.log";

  private record Waiting(ResultDocument result, Capture capture) {}

  private final String port;
  private final GradingSettings settings;
  private final ResultStore store;
  private final BenchListener listener;
  private final Deque<Waiting> waiting = new ArrayDeque<>();
  private @Nullable LiveStream live;
  private boolean complained;

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
  }

  @Override
  public void opened(Instant wallClock, String source) {
    live =
        new LiveStream(
            header(wallClock, source), phase -> listener.phase(port, phase), this::grade);
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
      stream.accept(hostMicros, line);
    }
  }

  @Override
  public void quiet(long hostMicros) {
    storeWaiting();
  }

  @Override
  public void lost(long hostMicros, long lines) {
    listener.notice(
        port + ": " + lines + " lines were lost: this computer is too slow at the moment");
  }

  @Override
  public void closed(long hostMicros, String why) {
    LiveStream stream = live;
    if (stream != null) {
      stream.end();
      live = null;
    }
    storeWaiting();
  }

  /** Results that the disk has not taken. */
  public int unsaved() {
    return waiting.size();
  }

  private void grade(Capture capture) {
    Grader.Source source = Grader.Source.capture(UNNAMED, Sha256.hex(capture.format()));
    List<ResultDocument> results = Grader.grade(capture, source, settings);
    if (results.isEmpty()) {
      listener.notice(
          port + ": " + "something like a test was seen, but it is none on a second look");
    }
    for (ResultDocument result : results) {
      String name = Archive.captureName(ResultTree.of(result));
      keep(new Waiting(result.withCapture(name), capture));
    }
    storeWaiting();
  }

  private void keep(Waiting result) {
    if (waiting.size() >= MOST_WAITING) {
      waiting.removeFirst();
      listener.notice(
          port + ": " + "a result is lost: the disk took none of the last " + MOST_WAITING);
    }
    waiting.addLast(result);
  }

  private void storeWaiting() {
    while (!waiting.isEmpty() && isStored(waiting.getFirst())) {
      waiting.removeFirst();
    }
  }

  private boolean isStored(Waiting next) {
    try {
      StoredResult stored = store.store(next.result(), next.capture());
      listener.result(port, next.result(), stored.document());
      complained = false;
      return true;
    } catch (ArchiveException e) {
      if (!complained) {
        listener.notice(
            port + ": " + e.getMessage() + "; results are kept in memory until it is mended");
        complained = true;
      }
      return false;
    }
  }
}
