package org.thumbseal.simulate;

import java.util.List;

/** How far places, sensors and pumps of a population differ. */
public enum Breadth {
  /** Up to 2500 m; 50 to 200 Hz; noise to 0.12 kPa, steps to 0.11 kPa. */
  USUAL(2_500, 120, 2),
  /** Up to 3000 m; 20 to 200 Hz; noise to 0.12 kPa, of one sensor in four to 0.3 kPa. */
  WIDE(3_000, 300, 0);

  private static final List<Double> RATES = List.of(20.0, 25.0, 50.0, 100.0, 200.0);
  private static final List<Double> STEPS = List.of(1.0, 10.0, 56.0, 112.0);
  private static final double QUIET_PASCALS = 120;

  private final double metres;
  private final double loudest;
  private final int slowest;

  Breadth(double metres, double loudest, int slowest) {
    this.metres = metres;
    this.loudest = loudest;
    this.slowest = slowest;
  }

  /** Six places in ten are at sea level. */
  double metres(Draw draw) {
    return draw.chance(0.6) ? 0 : draw.between(0, metres);
  }

  double hertz(Draw draw) {
    return draw.oneOf(RATES.subList(slowest, RATES.size()));
  }

  /** Noise and step, without zero and gain. */
  Transducer transducer(Draw draw) {
    double most = draw.chance(0.25) ? loudest : QUIET_PASCALS;
    return new Transducer(0, 0, draw.between(20, most), draw.oneOf(STEPS));
  }
}
