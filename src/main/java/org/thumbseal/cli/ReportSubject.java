package org.thumbseal.cli;

import java.util.Optional;
import org.thumbseal.report.Report;

/**
 * One result to make a page of.
 *
 * @param stem of the names of its files
 * @param report what there is to say, without its curve
 * @param recording that the curve is in; absent where it is missing or altered
 * @param fault what is wrong with document or recording, in half a sentence; empty where nothing is
 */
record ReportSubject(
    String stem, Report report, Optional<ReportRecording> recording, String fault) {
  /** The same with its curve in so many stretches. */
  Report drawn(int stretches) {
    return recording.map(r -> report.drawn(r.trace(stretches))).orElse(report);
  }
}
