package org.thumbseal.measurement;

/**
 * Where the parts of a test are in its record.
 *
 * @param recorded the record
 * @param clock the sensor's clock against the host's
 * @param rest the levels before the blocking
 * @param blocking when the inlet was blocked
 * @param release when the blocking ended
 */
record Located(Recorded recorded, ClockCheck clock, Rest rest, Blocking blocking, Release release) {
  /** The detector is late by some slots; so much is left out of the baseline, s. */
  private static final double BEFORE_ONSET = 0.3;

  private static final double BEFORE_BLOCKING = 3;
  private static final double FALLING = 2;
  private static final double OPEN_GUARD = 0.02;

  static Located in(Recorded recorded, SampleTimes times) {
    double seen = recorded.window().onsetSeconds();
    Release release = Release.of(recorded, seen);
    Blocking blocking = blocking(recorded, release);
    Rest rest = Rest.before(recorded.curve(), blocking.seconds() - OPEN_GUARD);
    return new Located(recorded, ClockCheck.of(recorded.samples(), times), rest, blocking, release);
  }

  private static Blocking blocking(Recorded recorded, Release release) {
    double quietEnd = quietEnd(recorded);
    Rest before = Rest.before(recorded.curve(), quietEnd);
    Curve curve =
        recorded.curve().between(quietBegin(recorded, before, quietEnd), release.seconds());
    if (curve.isEmpty()) {
      return new Blocking(
          recorded.window().onsetSeconds(),
          recorded.curve().period(),
          Blocking.Source.BETWEEN_SAMPLES);
    }
    double amplitude = curve.binned(0.1).highest() - before.openMean();
    return Blocking.of(new Blocking.Rise(curve, before.openMean(), amplitude, recorded.noise()));
  }

  /** Not before the end of a fall from the test before. */
  private static double quietBegin(Recorded recorded, Rest before, double quietEnd) {
    double from = quietEnd - BEFORE_BLOCKING;
    Curve lead = recorded.curve().between(from, quietEnd);
    double high = before.openMean() + Math.max(FALLING, 6 * recorded.noise());
    for (int i = 0; i < lead.size(); i++) {
      if (lead.level(i) > high) {
        from = lead.time(i) + 1e-6;
      }
    }
    return from;
  }

  private static double quietEnd(Recorded recorded) {
    double seen = recorded.window().onsetSeconds();
    boolean enough = seen - recorded.curve().firstTime() > 4 * BEFORE_ONSET;
    return enough ? seen - BEFORE_ONSET : seen;
  }

  /** The blocked part, on the sensor's own zero. */
  Curve blocked() {
    // Cut off from the release, a spike just before it can be told from its edge.
    return Spikes.removed(recorded.curve().between(blocking.seconds(), release.seconds()));
  }

  /** Seconds on the true clock. */
  double trueTime(double deviceSeconds) {
    return deviceSeconds * clock.rate();
  }
}
