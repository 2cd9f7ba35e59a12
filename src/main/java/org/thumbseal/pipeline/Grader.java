package org.thumbseal.pipeline;

import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.thumbseal.calibration.Calibrations;
import org.thumbseal.capture.BareRecording;
import org.thumbseal.capture.Capture;
import org.thumbseal.capture.CaptureHeader;
import org.thumbseal.capture.CaptureReader;
import org.thumbseal.capture.Table;
import org.thumbseal.finding.Finding;
import org.thumbseal.finding.Findings;
import org.thumbseal.finding.SoundRecord;
import org.thumbseal.grade.Criteria;
import org.thumbseal.grade.Grade;
import org.thumbseal.grade.Limits;
import org.thumbseal.measurement.Measurement;
import org.thumbseal.measurement.Observed;
import org.thumbseal.measurement.SampleTimes;
import org.thumbseal.measurement.SensorCalibration;
import org.thumbseal.measurement.Setup;
import org.thumbseal.measurement.Unblocked;
import org.thumbseal.phase.PhaseEvent;
import org.thumbseal.phase.TestWindow;
import org.thumbseal.record.Evidence;
import org.thumbseal.record.ResultDocument;
import org.thumbseal.record.ResultId;
import org.thumbseal.record.TestFacts;
import org.thumbseal.sample.StreamEvent.KeyPressed;
import org.thumbseal.sample.StreamEvent.Start;
import org.thumbseal.visit.StartedBy;
import org.thumbseal.visit.VisitFacts;
import org.thumbseal.wire.PlainLines;
import org.thumbseal.wire.WireRecord.Identity;

/**
 * Grades the tests in a record. A pure function of the record and the settings: live or replayed,
 * on any machine, the answer is the same.
 */
public final class Grader {
  private final Recording recording;
  private final Source source;
  private final GradingSettings settings;
  private final Criteria.Equipment known;
  private final Criteria criteria;

  private Grader(Recording recording, Source source, GradingSettings settings) {
    this.recording = recording;
    this.source = source;
    this.settings = settings.withCriteriaOf(asset(recording, settings));
    this.known =
        asset(recording, settings)
            .flatMap(settings.pumps()::of)
            .map(KnownPump::equipment)
            .orElse(Criteria.Equipment.UNKNOWN);
    this.criteria = this.settings.criteria().withRatedSpeed(ratedSpeed());
  }

  /**
   * The file that a record stands in.
   *
   * @param fileName without folder
   * @param sha256 of its bytes, 64 hexadecimal digits
   * @param columns where a table, or a line without header, has time and pressure; absent for a
   *     capture
   */
  public record Source(String fileName, String sha256, Optional<String> columns) {
    /** A capture file. */
    public static Source capture(String fileName, String sha256) {
      return new Source(fileName, sha256, Optional.empty());
    }
  }

  /** What was seen, and what is said of it. */
  private record Outcome(
      Observed observed, Grade grade, List<Finding> findings, Optional<String> comparedWith) {}

  private static Optional<String> asset(Recording recording, GradingSettings settings) {
    return settings
        .pump()
        .asset()
        .or(() -> recording.header().fact("asset"))
        .filter(id -> !id.isBlank());
  }

  /** The results of the tests in a capture, in order; none where no test was found. */
  public static List<ResultDocument> grade(
      Capture capture, Source source, GradingSettings settings) {
    return new Grader(Recording.of(capture), source, settings).results();
  }

  /** The same for a capture read from a file, in bounded memory however long it is. */
  public static List<ResultDocument> grade(
      CaptureReader capture, Source source, GradingSettings settings) throws IOException {
    return new Grader(Recording.of(capture), source, settings).results();
  }

  /** The results of the tests in another program's table, in order. */
  public static List<ResultDocument> grade(Table table, Source source, GradingSettings settings) {
    Recording recording = Recording.of(TableRecord.of(table, source.fileName()));
    return new Grader(recording, source, settings).results();
  }

  /** The results of the tests in lines that another program saved, in order. */
  public static List<ResultDocument> grade(
      BareRecording bare, Source source, GradingSettings settings) {
    return new Grader(Recording.of(bare, source.fileName()), source, settings).results();
  }

  private List<ResultDocument> results() {
    List<ResultDocument> results = new ArrayList<>();
    for (FoundTest test : recording.tests()) {
      results.add(result(test));
    }
    return results;
  }

  private ResultDocument result(FoundTest test) {
    if (test.event() instanceof PhaseEvent.NotBlocked open) {
      Unblocked start = Unblocked.of(open.window(), setup(test));
      return document(test, Optional.of(open.window().start()), unblocked(start));
    }
    TestWindow window = ((PhaseEvent.Tested) test.event()).window();
    return document(test, window.start(), measured(Measurement.of(window, setup(test))));
  }

  private Outcome unblocked(Unblocked start) {
    Grade grade = remarked(Grade.of(start, criteria));
    return new Outcome(start, grade, List.of(), Optional.empty());
  }

  private Outcome measured(Measurement measurement) {
    Grade grade = remarked(Grade.of(measurement, criteria));
    return new Outcome(
        measurement,
        grade,
        Findings.of(measurement, grade, settings.pump().sound().map(SoundRecord::signs)),
        settings.pump().sound().map(SoundRecord::id));
  }

  private ResultDocument document(FoundTest test, Optional<Start> start, Outcome outcome) {
    Optional<StartedBy> by = start.map(this::by);
    return new ResultDocument(
        ResultId.of(source.sha256(), test.ordinal()),
        asset(recording, settings),
        VisitFacts.checks(recording.header().facts()),
        facts(
            test,
            by.map(who -> new TestFacts.Start(who, outcome.observed().startedAt().orElseThrow()))),
        outcome.observed(),
        outcome.grade(),
        outcome.findings(),
        outcome.comparedWith(),
        new Evidence(
            source.fileName(),
            source.sha256(),
            source.columns(),
            recording.samples(),
            recording.gaps(),
            recording.rejected()));
  }

  private StartedBy by(Start said) {
    return said instanceof KeyPressed
        ? StartedBy.KEY
        : StartFeed.said(recording.header()).orElseThrow().by();
  }

  private TestFacts facts(FoundTest test, Optional<TestFacts.Start> start) {
    return new TestFacts(
        recording.firstSampleAt(),
        recording.header().fact("source").orElse(source.fileName()),
        test.sensor(),
        test.reference(),
        jarLitres(),
        recording.header().fact(CaptureHeader.LEAK_SEARCH).filter(id -> !id.isBlank()),
        start);
  }

  private Optional<Double> jarLitres() {
    return settings
        .pump()
        .jarLitres()
        .or(() -> Facts.number(recording.header(), "jar-l"))
        .or(known::jarLitres)
        .or(() -> criteria.equipment().jarLitres());
  }

  /** As for the jar: what the record says, what is kept of the pump, what goes with the limits. */
  private Optional<Double> ratedSpeed() {
    return Facts.number(recording.header(), CaptureHeader.RATED_SPEED)
        .or(known::ratedLitresPerMinute)
        .or(() -> settings.criteria().equipment().ratedLitresPerMinute());
  }

  /** By the start of the test alone, so that it is the same on whatever day it is graded. */
  private SensorCalibration calibration(FoundTest test) {
    Optional<String> sensor =
        test.sensor()
            .map(Identity::sensorId)
            .or(settings.sensor()::id)
            .or(() -> recording.header().fact("sensor"));
    return settings
        .sensor()
        .calibrations()
        .of(new Calibrations.Test(sensor, recording.firstSampleAt(), test.reference()));
  }

  /** A plain fact of the header: nothing in the readings tells a pinched hose from a pump off. */
  private boolean isPinched() {
    return settings.pump().pinched()
        || recording.header().fact("pinched").filter("true"::equals).isPresent();
  }

  private Setup setup(FoundTest test) {
    return new Setup(
        test.reference(),
        range(test),
        Facts.ambient(settings, recording.header(), test.ambient()),
        jarLitres(),
        isPinched(),
        ambient -> Limits.of(criteria, ambient).riseKilopascals(),
        calibration(test),
        recording.plain().filter(p -> !p.isTimed()).isPresent()
            ? SampleTimes.ARRIVAL
            : SampleTimes.SENSOR);
  }

  private Optional<Setup.Range> range(FoundTest test) {
    return test.sensor()
        .map(i -> new Setup.Range(i.lowPascals(), i.highPascals()))
        .or(
            () ->
                recording
                    .plain()
                    .flatMap(PlainLines::range)
                    .map(r -> new Setup.Range(r.lowPascals(), r.highPascals())));
  }

  private Grade remarked(Grade grade) {
    long rejected = recording.rejected().values().stream().mapToLong(n -> n).sum();
    return recording.plain().isPresent()
        ? grade.withUncheckedLines(rejected, recording.samples())
        : grade;
  }
}
