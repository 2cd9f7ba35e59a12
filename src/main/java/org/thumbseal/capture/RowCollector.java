package org.thumbseal.capture;

import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.thumbseal.capture.RecordCursor.TableRecord;
import org.thumbseal.sample.StreamEvent.Sample;

/** Turns rows into samples and counts those that are none. */
final class RowCollector {
  /** With more than one row in so many out of order, it is the wrong column, or two tables. */
  private static final int ROWS_FOR_ONE_IMPLAUSIBLE = 10;

  private final TableLayout layout;
  private final TimeCells times;
  private final PressureCells pressures;
  private final List<Sample> samples = new ArrayList<>();
  private Optional<Instant> started = Optional.empty();
  private double firstSeconds;
  private double lastSeconds = Double.NEGATIVE_INFINITY;
  private Optional<TableRecord> firstUnreadable = Optional.empty();
  private Optional<TableRecord> firstImplausible = Optional.empty();
  private int unreadable;
  private int implausible;

  RowCollector(TableLayout layout, TimeCells times, PressureCells pressures) {
    this.layout = layout;
    this.times = times;
    this.pressures = pressures;
  }

  void accept(TableRecord row) {
    OptionalDouble seconds = times.seconds(row.cell(layout.time()));
    OptionalDouble pascals = pressures.pascals(row.cell(layout.pressure()));
    if (!layout.fits(row) || seconds.isEmpty() || pascals.isEmpty()) {
      unreadable++;
      firstUnreadable = firstUnreadable.or(() -> Optional.of(row));
    } else if (seconds.getAsDouble() <= lastSeconds) {
      implausible++;
      firstImplausible = firstImplausible.or(() -> Optional.of(row));
    } else {
      add(row, seconds.getAsDouble(), pascals.getAsDouble());
    }
  }

  private void add(TableRecord row, double seconds, double pascals) {
    if (samples.isEmpty()) {
      firstSeconds = seconds;
      started = times.instant(row.cell(layout.time()));
    }
    lastSeconds = seconds;
    double since = seconds - firstSeconds;
    samples.add(new Sample(since, since, pascals));
  }

  /**
   * All rows.
   *
   * @throws CaptureFormatException if none can be used, or too many are out of order
   */
  Table table() throws CaptureFormatException {
    if (samples.isEmpty()) {
      throw new CaptureFormatException(
          "no row with a time and a pressure" + firstUnreadable.map(this::seenIn).orElse(""));
    }
    if (implausible * ROWS_FOR_ONE_IMPLAUSIBLE > samples.size() + implausible) {
      throw new CaptureFormatException(
          "the times go back or stand still in "
              + implausible
              + " rows"
              + firstImplausible.map(this::seenIn).orElse("")
              + ": is this the right column, in fine enough steps, and one recording?");
    }
    return new Table(started, pressures.sense().reference(), samples, unreadable, implausible);
  }

  private String seenIn(TableRecord row) {
    return " (first in line "
        + row.line()
        + ": '"
        + Quote.of(row.cell(layout.time()))
        + "', '"
        + Quote.of(row.cell(layout.pressure()))
        + "')";
  }
}
