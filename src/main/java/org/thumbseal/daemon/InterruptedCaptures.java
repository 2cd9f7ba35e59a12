package org.thumbseal.daemon;

import java.io.IOException;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import org.thumbseal.archive.ArchiveException;
import org.thumbseal.archive.OpenCaptures;
import org.thumbseal.capture.Capture;
import org.thumbseal.capture.CaptureFormatException;
import org.thumbseal.capture.CaptureHeader;
import org.thumbseal.capture.CaptureReader;
import org.thumbseal.pipeline.Grader;
import org.thumbseal.pipeline.GradingSettings;
import org.thumbseal.record.ResultDocument;
import org.thumbseal.seal.Sha256;
import org.tinylog.Logger;

/**
 * Takes up what an interrupted process left under way, before any port is opened, and says what
 * became of each file. A test in it is graded as a replay grades it and stored; since the bytes are
 * those that a live test would have been graded from, one that was stored before is found to be.
 * What cannot be used is put aside, and is no reason not to start.
 */
public final class InterruptedCaptures {
  /** No open capture of ours gets near it. */
  private static final long LARGEST_BYTES = 64L << 20;

  private final ResultStore store;
  private final GradingSettings settings;
  private final BenchListener listener;

  /**
   * Takes up what the archive of the store holds.
   *
   * @param settings criteria and calibrations; the rest is taken from each capture's own header
   * @param listener is told of each file, and of the results
   */
  public InterruptedCaptures(ResultStore store, GradingSettings settings, BenchListener listener) {
    this.store = store;
    this.settings = settings;
    this.listener = listener;
  }

  /**
   * Goes through all of them. Cut short, it can be done again.
   *
   * @throws ArchiveException if the folder cannot be made or read
   */
  public void takeUp() throws ArchiveException {
    OpenCaptures open = store.open();
    open.prepare();
    for (Path file : open.left()) {
      try {
        takeUp(file);
      } catch (ArchiveException e) {
        say(file, "left for the next start: " + e.getMessage());
      }
    }
  }

  private void takeUp(Path file) throws ArchiveException {
    if (OpenCaptures.isUnfinished(file)) {
      store.open().remove(file);
      say(file, "removed: the file it was to replace is whole");
      return;
    }
    try {
      byte[] bytes = WholeRecord.read(file, LARGEST_BYTES);
      if (bytes.length == 0) {
        store.open().remove(file);
        say(file, "interrupted before anything was in it; removed");
      } else {
        takeUp(file, CaptureReader.read(bytes), bytes);
      }
    } catch (CaptureFormatException | IOException e) {
      putAside(file, "it cannot be read: " + e.getMessage());
    } catch (RuntimeException e) {
      Logger.error(e, "{}: not taken up", file);
      putAside(file, "an error of this program, please report it: " + e);
    }
  }

  private void takeUp(Path file, Capture capture, byte[] bytes) throws ArchiveException {
    List<ResultDocument> results = grade(capture, bytes);
    if (!results.isEmpty()) {
      store(file, capture, bytes, results);
    } else if (WholeRecord.isPumpRunning(capture)) {
      keep(file, capture);
    } else {
      store.open().remove(file);
      say(file, "interrupted while nothing was going on; removed");
    }
  }

  private List<ResultDocument> grade(Capture capture, byte[] bytes) {
    Grader.Source source = Grader.Source.capture(TestRecorder.UNNAMED, Sha256.hex(bytes));
    return Grader.grade(capture, source, settings.forRecordOf(capture.header()));
  }

  private void store(Path file, Capture capture, byte[] bytes, List<ResultDocument> results)
      throws ArchiveException {
    var origin = new Unsaved.Origin(port(capture), Optional.of(file), true);
    boolean stored = store.take(new Unsaved(origin, TestRecorder.named(results), bytes));
    if (stored) {
      store.open().remove(file);
      say(file, "interrupted, and taken up: its test is stored");
    } else {
      say(file, "interrupted, and taken up: its test is stored when the disk takes it");
    }
  }

  private void keep(Path file, Capture capture) throws ArchiveException {
    CaptureHeader header =
        capture
            .header()
            .with("interrupted", "the program or the computer stopped here; no test was found");
    byte[] marked = new Capture(header, capture.lines(), 0).format();
    Path kept = store.open().setAside(file, header.started().toString(), marked);
    say(file, "interrupted with a pump running, but before a test; kept as " + kept);
  }

  private void putAside(Path file, String why) throws ArchiveException {
    say(file, "put aside as " + store.open().setAside(file) + ": " + why);
  }

  private static String port(Capture capture) {
    return capture.header().fact("source").orElse("interrupted");
  }

  private void say(Path file, String what) {
    listener.notice(file + ": " + what);
  }
}
