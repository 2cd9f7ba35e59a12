package org.thumbseal.page;

import org.thumbseal.json.Decimals;
import org.thumbseal.json.Json;
import org.thumbseal.pipeline.LiveStream;
import org.thumbseal.sample.StreamEvent.Sample;
import tools.jackson.databind.node.ObjectNode;

/** What line and sensor are doing, counted as it comes and looked at once a second. */
final class LineQuality {
  private static final double MICROS = 1e6;
  private static final long PERIOD = 1_000_000;

  /** Seconds of host time over which the rate is taken, as a share of the newest. */
  private static final double NEWEST = 0.4;

  private long lines;
  private long gaps;
  private long dropped;
  private long samples;
  private long lookedAt;
  private double previous = Double.NaN;
  private double squares;
  private long steps;
  private double rate = Double.NaN;
  private double noise = Double.NaN;

  void sample(Sample sample, boolean atRest) {
    samples++;
    double step = sample.pascals() - previous;
    previous = sample.pascals();
    if (atRest && !Double.isNaN(step)) {
      squares += step * step;
      steps++;
    }
  }

  void gap() {
    gaps++;
  }

  void dropped(long count) {
    dropped += count;
  }

  /** Counts a line; true once a second, when it is time to look. */
  boolean line(long hostMicros) {
    lines++;
    if (hostMicros - lookedAt < PERIOD) {
      return false;
    }
    look((hostMicros - lookedAt) / MICROS);
    lookedAt = hostMicros;
    return true;
  }

  private void look(double seconds) {
    double now = samples / seconds;
    rate = Double.isNaN(rate) ? now : rate + NEWEST * (now - rate);
    samples = 0;
    if (steps > 1) {
      // Two neighbours differ by the noise of both.
      noise = Math.sqrt(squares / steps / 2) / 1_000;
    }
    squares = 0;
    steps = 0;
  }

  ObjectNode tree(LiveStream stream) {
    ObjectNode node = Json.object();
    put(node, "rate", rate, 1);
    ObjectNode causes = Json.object();
    int rejected = 0;
    for (var entry : stream.rejected().entrySet()) {
      causes.put(entry.getKey().code(), entry.getValue());
      rejected += entry.getValue();
    }
    node.put("lines", lines).put("rejected", rejected).set("rejectedBy", causes);
    node.put("gaps", gaps).put("dropped", dropped);
    put(node, "noise", noise, 3);
    return node;
  }

  static void put(ObjectNode node, String name, double value, int places) {
    if (!Double.isNaN(value)) {
      node.put(name, Decimals.round(value, places));
    }
  }
}
