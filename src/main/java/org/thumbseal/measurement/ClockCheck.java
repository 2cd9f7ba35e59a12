package org.thumbseal.measurement;

import java.util.List;
import org.thumbseal.measurement.Contribution.Input;
import org.thumbseal.sample.StreamEvent.Sample;

/**
 * The sensor's clock against the host's.
 *
 * @param rate true seconds per device second; 1 where the record cannot tell
 * @param standardUncertainty of the rate
 * @param steady whether the two clocks run in proportion, arrival in batches allowed for
 */
record ClockCheck(double rate, double standardUncertainty, boolean steady) {
  private static final double SHORTEST = 8;
  private static final double LARGEST_BATCH = 0.3;
  private static final double LARGEST_ERROR = 0.1;

  /** So many times faster than life no sensor sends: a file was read, or a pipe that was full. */
  private static final double NO_ARRIVAL = 0.1;

  /** Rectangular, +-0.5 %: a ceramic resonator as boards carry it (common practice). */
  private static final double UNKNOWN_RATE = 0.005;

  private static final String ARRIVED = "no time of the sensor's own: arrival, up to 100 ms late";

  private static final ClockCheck UNKNOWN = new ClockCheck(1, UNKNOWN_RATE / Math.sqrt(3), true);

  /** Rectangular, +-0.01 %: the quartz of a computer (common practice). */
  private static final double HOST_RATE = 0.0001;

  private static final ClockCheck HOST = new ClockCheck(1, HOST_RATE / Math.sqrt(3), true);

  /** USB hands on what has come up to so much later, s (common practice). */
  private static final double LATEST = 0.1;

  static ClockCheck of(List<Sample> samples, SampleTimes times) {
    return times == SampleTimes.ARRIVAL ? HOST : of(samples);
  }

  static ClockCheck of(List<Sample> samples) {
    int n = samples.size();
    if (n < 3 || samples.get(n - 1).seconds() - samples.get(0).seconds() < SHORTEST) {
      return UNKNOWN;
    }
    Line line = Line.through(samples);
    if (line.slope < NO_ARRIVAL) {
      return UNKNOWN;
    }
    if (Math.abs(line.slope - 1) > LARGEST_ERROR) {
      return new ClockCheck(1, Math.abs(line.slope - 1), false);
    }
    return new ClockCheck(line.slope, line.error, line.widest < LARGEST_BATCH);
  }

  /** What arrival leaves open of one instant; nothing where the sensor times its samples. */
  List<Contribution> ofInstant() {
    return equals(HOST)
        ? List.of(Contribution.of("arrival", Input.rectangular(0, LATEST / 2, "s"), ARRIVED))
        : List.of();
  }

  /** The same for the time between two of them, each late by its own part. */
  List<Contribution> ofSpan() {
    return equals(HOST)
        ? List.of(Contribution.of("arrival", Input.triangular(0, LATEST, "s"), ARRIVED))
        : List.of();
  }

  /** Standard uncertainty of an instant from its arrival, s. */
  double instantError() {
    return ofInstant().stream().mapToDouble(Contribution::standardUncertainty).sum();
  }

  /** Its line in the budget of a time, s of the device. */
  Contribution contribution(double deviceSeconds) {
    if (equals(HOST)) {
      return new Contribution(
          "clock",
          Input.rectangular(rate, HOST_RATE, "1"),
          deviceSeconds,
          "clock of the computer: +-0.01 %");
    }
    return equals(UNKNOWN)
        ? new Contribution(
            "clock",
            Input.rectangular(rate, UNKNOWN_RATE, "1"),
            deviceSeconds,
            "record too short to tell: +-0.5 %")
        : new Contribution(
            "clock",
            Input.normal(rate, standardUncertainty, "1"),
            deviceSeconds,
            "arrival at the host against the sensor's own count");
  }

  /** Least squares of arrival time over device time. */
  private static final class Line {
    private double slope;
    private double error;
    private double widest;

    static Line through(List<Sample> samples) {
      Line line = new Line();
      double device = samples.stream().mapToDouble(Sample::seconds).average().orElseThrow();
      double host = samples.stream().mapToDouble(Sample::hostSeconds).average().orElseThrow();
      double xx = 0;
      double xy = 0;
      for (Sample s : samples) {
        xx += (s.seconds() - device) * (s.seconds() - device);
        xy += (s.seconds() - device) * (s.hostSeconds() - host);
      }
      line.slope = xy / xx;
      line.spread(samples, host - line.slope * device);
      line.error = line.widest / Math.sqrt(12 * xx * line.independent(samples) / samples.size());
      return line;
    }

    /** Arrival times in one batch share one error. */
    private double independent(List<Sample> samples) {
      double span = samples.get(samples.size() - 1).seconds() - samples.get(0).seconds();
      return Math.min(samples.size(), Math.max(3, span / Math.max(widest, 1e-6)));
    }

    private void spread(List<Sample> samples, double offset) {
      double[] late =
          samples.stream()
              .mapToDouble(s -> s.hostSeconds() - offset - slope * s.seconds())
              .toArray();
      java.util.Arrays.sort(late);
      widest = late[late.length - 1] - late[0];
    }
  }
}
