package org.thumbseal.cli;

import java.io.IOException;
import java.nio.file.Path;
import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneOffset;
import java.util.Optional;
import org.thumbseal.capture.CaptureFormatException;
import org.thumbseal.report.CurvePicture;
import org.thumbseal.report.Report;
import org.thumbseal.report.ReportPage;
import org.thumbseal.report.SamplesCsv;
import org.thumbseal.report.TestShape;
import picocli.CommandLine.Option;

/** Which results are asked for, and in what form. */
final class ReportPages {
  @Option(names = "--svg", description = "the curve alone, as SVG")
  private boolean svg;

  @Option(
      names = "--csv",
      description = "the samples alone, after zero and calibration, with their phases")
  private boolean csv;

  @Option(
      names = "--asset",
      paramLabel = "ID",
      description = "only results of this pump, corrections considered")
  private Optional<String> asset = Optional.empty();

  @Option(
      names = "--from",
      paramLabel = "DATE",
      description = "only tests from this day on, UTC: 2026-03-02")
  private Optional<LocalDate> from = Optional.empty();

  /** Whether pages are asked for, not curves or samples alone. */
  boolean arePages() {
    return !svg && !csv;
  }

  boolean wants(Report report) {
    Optional<Instant> first = from.map(day -> day.atStartOfDay(ZoneOffset.UTC).toInstant());
    return asset.map(id -> report.standing().asset().equals(asset)).orElse(true)
        && first
            .map(f -> report.blockedAt().filter(at -> !at.isBefore(f)).isPresent())
            .orElse(true);
  }

  /** Name of the file of a result. */
  String name(ReportSubject subject) {
    return subject.stem() + (csv ? ".csv" : svg ? ".svg" : ".html");
  }

  /** Writes what is asked for of a result whose curve is drawn. */
  Path write(ReportSubject subject, Report drawn, ReportFolder folder) {
    String content =
        csv ? samples(subject) : svg ? CurvePicture.file(drawn) : ReportPage.html(drawn);
    return folder.write(name(subject), content);
  }

  private static String samples(ReportSubject subject) {
    ReportRecording recording =
        subject
            .recording()
            .orElseThrow(
                () -> Failure.notPassed(subject.stem() + ": no samples: " + subject.fault()));
    StringBuilder text = new StringBuilder();
    try {
      recording.read(new SamplesCsv(new TestShape(subject.report().document()), text));
      return text.toString();
    } catch (IOException | CaptureFormatException e) {
      throw Failure.usage(recording.file() + ": " + e.getMessage());
    }
  }
}
