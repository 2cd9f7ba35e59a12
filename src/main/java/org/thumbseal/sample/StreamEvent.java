package org.thumbseal.sample;

/** What the stream of records amounts to, one after another, on the sensor's own clock. */
public sealed interface StreamEvent {

  /**
   * Device time in seconds since the first sample of the stream; grows without wrapping. After a
   * restart of the sensor it goes on by the host's clock.
   */
  double seconds();

  /**
   * One reading at its own time.
   *
   * @param seconds device time, s
   * @param hostSeconds arrival on the host's monotonic clock, s
   * @param pascals as sent, Pa: gauge (negative under vacuum) or absolute
   */
  record Sample(double seconds, double hostSeconds, double pascals) implements StreamEvent {}

  /**
   * Samples that were sent and did not arrive.
   *
   * @param seconds device time of the last sample before the gap, s
   * @param length s from that sample to the next one
   * @param lost number of samples missing, where the counter tells
   */
  record Gap(double seconds, double length, long lost) implements StreamEvent {}

  /** The sensor began anew: its counter and clock are not those of before. */
  record Restart(double seconds) implements StreamEvent {}

  /** The sensor said that something is wrong with it. */
  record SensorFault(double seconds, String code) implements StreamEvent {}

  /** Somebody said that a test begins. */
  sealed interface Start extends StreamEvent {
    /** When it was said on the host's monotonic clock, s. */
    double hostSeconds();
  }

  /** The start key was pressed. */
  record KeyPressed(double seconds, double hostSeconds) implements Start {}

  /** It was said to the host; its device time is that of the last sample before. */
  record StartSaid(double seconds, double hostSeconds) implements Start {}
}
