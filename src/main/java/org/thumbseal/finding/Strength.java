package org.thumbseal.finding;

/**
 * Turns the size of a sign into a confidence. The numbers are held to simulated pumps: see
 * src/docs/accuracy.md.
 */
final class Strength {
  private static final double SUREST = 0.97;

  private Strength() {}

  /**
   * Confidence that a sign is no accident.
   *
   * @param size of the sign
   * @param smallest that is said at all
   * @param least confidence of the smallest
   */
  static double confidence(double size, double smallest, double least) {
    double beyond = Math.max(0, size / smallest - 1);
    double confidence = least + (SUREST - least) * beyond / (beyond + 1);
    return Math.rint(confidence * 100) / 100;
  }
}
