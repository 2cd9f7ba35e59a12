package org.thumbseal.pipeline;

import java.io.IOException;
import org.thumbseal.capture.BareRecording;
import org.thumbseal.capture.CaptureReader;
import org.thumbseal.capture.Table;
import org.thumbseal.pipeline.CurvePoints.Point;
import org.thumbseal.sample.SampleStream;
import org.thumbseal.sample.StreamEvent;

/**
 * Reads the curve of a test that was graded before out of its recording, one sample after another
 * however long that is. Lines that were rejected are left out, and nothing is put in their place.
 */
public final class CurveReading {
  private final CurveFrame frame;
  private final Taker taker;

  private CurveReading(CurveFrame frame, Taker taker) {
    this.frame = frame;
    this.taker = taker;
  }

  /** Takes the curve in order. */
  public interface Taker {
    /** A sample. */
    void point(Point point);

    /** Samples are missing between these times, s since the origin. */
    void gap(double from, double to);
  }

  /** Reads a capture. */
  public static void of(CaptureReader capture, CurveFrame frame, Taker taker) throws IOException {
    CurveReading reading = new CurveReading(frame, taker);
    SampleStream stream = new SampleStream(capture.header().lineFormat(), reading::take);
    capture.forEachLine(line -> stream.accept(line.hostMicros(), line.text()));
    stream.end();
  }

  /** Reads lines that another program saved. */
  public static void of(BareRecording bare, CurveFrame frame, Taker taker) {
    CurveReading reading = new CurveReading(frame, taker);
    SampleStream stream = new SampleStream(bare.format(), reading::take);
    bare.lines().forEach(line -> stream.accept(0, line));
    stream.end();
  }

  /** Reads another program's table. */
  public static void of(Table table, CurveFrame frame, Taker taker) {
    CurveReading reading = new CurveReading(frame, taker);
    TableRecord.of(table, "").events().forEach(reading::take);
  }

  private void take(StreamEvent event) {
    if (event instanceof StreamEvent.Sample sample) {
      taker.point(frame.point(sample));
    } else if (event instanceof StreamEvent.Gap gap) {
      taker.gap(frame.time(gap.seconds()), frame.time(gap.seconds() + gap.length()));
    }
  }
}
