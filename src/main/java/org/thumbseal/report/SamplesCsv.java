package org.thumbseal.report;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.util.Locale;
import org.thumbseal.pipeline.CurvePoints.Point;
import org.thumbseal.pipeline.CurveReading;

/**
 * The samples of a recording as RFC 4180 text: vacuum after zero and calibration, with the phase of
 * the test that each belongs to. A sample that is not there has no row.
 */
public final class SamplesCsv implements CurveReading.Taker {
  static final String NAMES_BEGIN = "time_since_";
  private static final String END = "\r\n";

  private final TestShape shape;
  private final Appendable out;

  /** Writes the names of the columns; the samples follow. */
  public SamplesCsv(TestShape shape, Appendable out) throws IOException {
    this.shape = shape;
    this.out = out;
    out.append(NAMES_BEGIN).append(shape.isBlocked() ? "blocking_s" : "first_sample_s");
    out.append(",vacuum_kPa,phase").append(END);
  }

  @Override
  public void point(Point point) {
    try {
      out.append(String.format(Locale.ROOT, "%.6f,%.4f,", point.seconds(), point.kilopascals()));
      out.append(field(shape.phaseAt(point.seconds()))).append(END);
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  /** Phases are words of a document, which may be anybody's; a spreadsheet would run some. */
  private static String field(String text) {
    return text.matches("[a-z]{0,20}") ? text : "other";
  }

  @Override
  public void gap(double from, double to) {}
}
