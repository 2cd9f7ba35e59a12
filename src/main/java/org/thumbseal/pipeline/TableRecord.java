package org.thumbseal.pipeline;

import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import org.thumbseal.capture.CaptureHeader;
import org.thumbseal.capture.Table;
import org.thumbseal.sample.StreamEvent;
import org.thumbseal.sample.StreamEvent.Gap;
import org.thumbseal.sample.StreamEvent.Sample;
import org.thumbseal.wire.WireRecord.Reference;

/**
 * Another program's table as a stream: a table has no counter, so a row that comes much later than
 * rows do stands behind a gap.
 */
record TableRecord(
    CaptureHeader header,
    boolean dated,
    Reference reference,
    List<StreamEvent> events,
    Map<String, Integer> rejected) {
  private static final double LONGEST_STEP = 0.25;
  private static final double LONGEST_IN_PERIODS = 4;

  static TableRecord of(Table table, String source) {
    CaptureHeader header =
        new CaptureHeader(table.started().orElse(Instant.EPOCH), Map.of("source", source));
    return new TableRecord(
        header,
        table.started().isPresent(),
        table.reference(),
        withGaps(table.samples()),
        Map.of("unreadable", table.unreadable(), "implausible", table.implausible()));
  }

  private static List<StreamEvent> withGaps(List<Sample> samples) {
    double longest = Math.max(LONGEST_STEP, LONGEST_IN_PERIODS * period(samples));
    List<StreamEvent> events = new ArrayList<>(samples.size());
    for (int i = 0; i < samples.size(); i++) {
      if (i > 0 && step(samples, i) > longest) {
        events.add(new Gap(samples.get(i - 1).seconds(), step(samples, i), 0));
      }
      events.add(samples.get(i));
    }
    return events;
  }

  private static double period(List<Sample> samples) {
    double[] steps = new double[Math.max(0, samples.size() - 1)];
    java.util.Arrays.setAll(steps, i -> step(samples, i + 1));
    java.util.Arrays.sort(steps);
    return steps.length == 0 ? 0 : steps[steps.length / 2];
  }

  private static double step(List<Sample> samples, int index) {
    return samples.get(index).seconds() - samples.get(index - 1).seconds();
  }
}
