package org.thumbseal.report;

/**
 * A straight scale of a drawing.
 *
 * @param from value at its beginning
 * @param to value at its end, another one
 * @param start coordinate of the beginning
 * @param end coordinate of the end
 */
record Scale(double from, double to, double start, double end) {
  double at(double value) {
    return start + (end - start) * (value - from) / (to - from);
  }

  /** The same, kept between the two ends. */
  double inside(double value) {
    double low = Math.min(start, end);
    return Math.max(low, Math.min(Math.max(start, end), at(value)));
  }

  /** Distance of marks that people can read: 1, 2 or 5 and noughts, about so many of them. */
  double step(int about) {
    double rough = Math.abs(to - from) / about;
    double power = Math.pow(10, Math.floor(Math.log10(rough)));
    double share = rough / power;
    return power * (share < 1.5 ? 1 : share < 3.5 ? 2 : share < 7.5 ? 5 : 10);
  }
}
