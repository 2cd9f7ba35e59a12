package org.thumbseal.cli;

import java.util.List;
import java.util.Locale;
import java.util.Optional;
import org.thumbseal.calibration.AppliedCalibration;
import org.thumbseal.calibration.AppliedCalibration.Timing;
import org.thumbseal.calibration.Calibration;
import org.thumbseal.calibration.CalibrationLine;
import org.thumbseal.quantity.Quantity;
import org.thumbseal.wire.WireRecord.Reference;

/** A calibration in a few lines of text. */
final class CalibrationText {
  private CalibrationText() {}

  static List<String> lines(Calibration calibration) {
    CalibrationLine line = calibration.line();
    return List.of(
        format(
            "CALIBRATED  sensor %s, against %s (certificate %s), due %s",
            calibration.facts().sensor(),
            calibration.facts().reference().name(),
            calibration.facts().reference().certificate(),
            calibration.facts().due()),
        format(
            "  true vacuum = %.3f kPa + %.4f x reading, from %d points, %.1f to %.1f kPa",
            line.offset(), line.gain(), line.line().count(), line.lowest(), line.highest()),
        format(
            "  as found: %+.2f kPa off at %.1f kPa",
            calibration.asFound().error(), calibration.asFound().at()),
        format(
            "  corrected readings from now on: +- %.2f kPa at %.1f kPa (k = 2, noise and zero"
                + " aside)",
            expanded(calibration), line.highest()));
  }

  private static double expanded(Calibration calibration) {
    var applied =
        new AppliedCalibration(calibration, new Timing(0, Optional.empty()), Reference.GAUGE);
    return Quantity.COVERAGE_FACTOR * applied.standardUncertainty(calibration.line().highest());
  }

  private static String format(String format, Object... values) {
    return String.format(Locale.ROOT, format, values);
  }
}
