package org.thumbseal.calibration;

/**
 * The gauge that a sensor was held against.
 *
 * @param name which gauge it is: maker's number or inventory number
 * @param certificate number of its own calibration certificate
 * @param expandedUncertainty U of its readings, from that certificate, kPa, above 0 and at most 5
 * @param coverageFactor k that belongs to U, 1 to 4; 2 is usual
 */
public record ReferenceGauge(
    String name, String certificate, double expandedUncertainty, double coverageFactor) {
  private static final double LARGEST = 5;

  /** Standard uncertainty of a reading, kPa. */
  public double standardUncertainty() {
    return expandedUncertainty / coverageFactor;
  }

  void check() throws CalibrationRefused {
    if (name.isBlank() || certificate.isBlank()) {
      throw new CalibrationRefused(
          "say which gauge the reference is and the number of its certificate");
    }
    if (!(expandedUncertainty > 0 && expandedUncertainty <= LARGEST)) {
      throw new CalibrationRefused(
          "the uncertainty of the reference must be above 0 and at most %.0f kPa, not %s kPa;"
              + " its certificate states it",
          LARGEST, expandedUncertainty);
    }
    if (!(coverageFactor >= 1 && coverageFactor <= 4)) {
      throw new CalibrationRefused(
          "the coverage factor must be between 1 and 4, not %s; 2 is usual", coverageFactor);
    }
  }
}
