package org.thumbseal.capture;

import java.time.Instant;
import java.util.List;
import java.util.Optional;
import org.thumbseal.sample.StreamEvent.Sample;
import org.thumbseal.wire.WireRecord.Reference;

/**
 * A table of time and pressure in the form of a sensor's readings.
 *
 * @param started wall clock at the first sample, where the times are dates with an offset or count
 *     from 1970
 * @param reference what the pressures count from; vacuum became negative gauge pressure
 * @param samples in order of time, the first at 0 s; a table has one clock, so device and host time
 *     are the same
 * @param unreadable rows without a time or a pressure
 * @param implausible rows whose time stands still or goes back
 */
public record Table(
    Optional<Instant> started,
    Reference reference,
    List<Sample> samples,
    int unreadable,
    int implausible) {
  /** Keeps a copy of the samples. */
  public Table {
    samples = List.copyOf(samples);
  }
}
