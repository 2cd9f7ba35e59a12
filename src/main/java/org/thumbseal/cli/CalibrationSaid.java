package org.thumbseal.cli;

import java.time.DateTimeException;
import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneOffset;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import org.thumbseal.calibration.CalibrationFacts;
import org.thumbseal.calibration.ReferenceGauge;
import org.thumbseal.json.CalibrationTree;
import picocli.CommandLine.Option;

/** What a user says about a calibration, on the command line. */
final class CalibrationSaid {
  private static final int LONGEST_TEXT = 100;
  private static final int MOST_MONTHS = 60;

  @Option(
      names = "--sensor",
      paramLabel = "ID",
      description = "id of the sensor; with --port only to make sure that it is this one")
  private @Nullable String sensor;

  @Option(
      names = "--reference",
      required = true,
      paramLabel = "NAME",
      description = "the reference gauge: its serial or inventory number")
  private String reference = "";

  @Option(
      names = "--certificate",
      required = true,
      paramLabel = "NO",
      description = "number of the reference gauge's own calibration certificate")
  private String certificate = "";

  @Option(
      names = "--reference-uncertainty",
      required = true,
      paramLabel = "U",
      description = "expanded uncertainty of the reference, from its certificate: \"0.25 kPa\"")
  private String uncertainty = "";

  @Option(
      names = "--reference-k",
      paramLabel = "K",
      description = "coverage factor of that uncertainty (default: 2)")
  private double factor = 2;

  @Option(
      names = "--repeatability",
      paramLabel = "P",
      description = "half width of what a pair read with care scatters by (default: 0.1 kPa)")
  private String repeatability = CalibrationFacts.USUAL_REPEATABILITY + " kPa";

  @Option(names = "--temperature", paramLabel = "T", description = "of the room, degrees Celsius")
  private @Nullable Double temperature;

  @Option(names = "--by", paramLabel = "NAME", description = "who calibrates")
  private @Nullable String by;

  @Option(
      names = "--date",
      paramLabel = "DATE",
      description = "day of a calibration done earlier, UTC: 2026-11-25 (default: now)")
  private @Nullable String date;

  @Option(
      names = "--due",
      paramLabel = "DATE",
      description = "last day on which it is to be relied on, UTC: 2027-11-25")
  private @Nullable String due;

  @Option(
      names = "--valid-months",
      paramLabel = "N",
      description = "so long it is to be relied on, 1 to 60 (default: 12)")
  private @Nullable Integer months;

  /** The id given, if one was. */
  Optional<String> sensor() {
    return Optional.ofNullable(sensor).map(id -> plain("--sensor", id));
  }

  /** All that was said, about the sensor of this id. */
  CalibrationFacts facts(String id, Instant now) {
    Instant at = CalibrationTree.toMillis(calibratedAt(now));
    return new CalibrationFacts(
        id,
        at,
        due(LocalDate.ofInstant(at, ZoneOffset.UTC)),
        new ReferenceGauge(
            plain("--reference", reference),
            plain("--certificate", certificate),
            pressure("--reference-uncertainty", uncertainty),
            CalibrationTree.rounded(factor)),
        pressure("--repeatability", repeatability),
        Optional.ofNullable(temperature).map(CalibrationTree::rounded),
        Optional.ofNullable(by).map(name -> plain("--by", name)));
  }

  private Instant calibratedAt(Instant now) {
    if (date == null) {
      return now;
    }
    Instant begin = day("--date", date).atStartOfDay(ZoneOffset.UTC).toInstant();
    if (begin.isAfter(now)) {
      throw Failure.usage("--date " + date + " is still to come");
    }
    return begin;
  }

  private LocalDate due(LocalDate from) {
    if (due != null && months != null) {
      throw Failure.usage("give --due or --valid-months, not both");
    }
    if (due != null) {
      return day("--due", due);
    }
    int term = months == null ? 12 : months;
    if (term < 1 || term > MOST_MONTHS) {
      throw Failure.usage("--valid-months must be between 1 and 60, not " + term);
    }
    return from.plusMonths(term);
  }

  private static LocalDate day(String option, String text) {
    try {
      return LocalDate.parse(text);
    } catch (DateTimeException e) {
      throw Failure.usage(option + ": '" + text + "' is no date; write it as 2027-11-25");
    }
  }

  private static double pressure(String option, String text) {
    try {
      return PressureText.kilopascals(text);
    } catch (IllegalArgumentException e) {
      throw Failure.usage(option + ": " + e.getMessage());
    }
  }

  private static String plain(String option, String text) {
    String stripped = text.strip();
    boolean wrong =
        stripped.isEmpty()
            || stripped.length() > LONGEST_TEXT
            || stripped.chars().anyMatch(Character::isISOControl);
    if (wrong) {
      throw Failure.usage(option + " must be 1 to 100 plain characters");
    }
    return stripped;
  }
}
