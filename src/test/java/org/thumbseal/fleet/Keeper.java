package org.thumbseal.fleet;

import java.time.Instant;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.thumbseal.archive.Archive;
import org.thumbseal.calibration.Calibration;
import org.thumbseal.calibration.Calibrations;
import org.thumbseal.capture.Capture;
import org.thumbseal.capture.CaptureHeader;
import org.thumbseal.capture.CaptureLine;
import org.thumbseal.care.Inspection;
import org.thumbseal.care.Work;
import org.thumbseal.grade.Verdict;
import org.thumbseal.json.CalibrationTree;
import org.thumbseal.json.Canonical;
import org.thumbseal.json.InspectionTree;
import org.thumbseal.json.ResultTree;
import org.thumbseal.pipeline.Grader;
import org.thumbseal.pipeline.GradingSettings;
import org.thumbseal.record.ResultDocument;
import org.thumbseal.record.ResultId;
import org.thumbseal.seal.Sha256;
import org.thumbseal.simulate.Scenario;
import tools.jackson.databind.node.ObjectNode;

/** Grades, seals and stores, as the program does: nothing here knows what a pump is like. */
final class Keeper {
  private final Optional<Archive> archive;
  private final Map<String, Verdict> remembered;
  private final List<Calibration> calibrations = new ArrayList<>();
  private int documents;

  Keeper(Optional<Archive> archive, Map<String, Verdict> remembered) {
    this.archive = archive;
    this.remembered = remembered;
  }

  /** By which a test is remembered: its pump and its minute. */
  static String mark(String asset, Instant at) {
    return asset + " " + at.getEpochSecond() / 60;
  }

  int documents() {
    return documents;
  }

  /** A test as it was recorded at an instant; what came out, invalid where no test was found. */
  Verdict test(Scenario scenario, Instant at, Map<String, String> said) throws Exception {
    if (archive.isEmpty()) {
      String asset = said.getOrDefault("asset", "");
      return remembered.getOrDefault(mark(asset, at), Verdict.INVALID);
    }
    byte[] capture = capture(scenario, new CaptureHeader(at, said)).format();
    Grader.Source source = Grader.Source.capture("live", Sha256.hex(capture));
    GradingSettings settings =
        GradingSettings.DEFAULT.withSensor(
            s -> s.withCalibrations(new Calibrations(List.copyOf(calibrations))));
    Verdict verdict = Verdict.INVALID;
    for (ResultDocument result :
        Grader.grade(org.thumbseal.capture.CaptureReader.read(capture), source, settings)) {
      archive.get().store(ResultTree.of(result), capture);
      documents++;
      verdict = result.grade().verdict();
    }
    return verdict;
  }

  private static Capture capture(Scenario scenario, CaptureHeader header) {
    List<CaptureLine> lines = new ArrayList<>();
    scenario.lines().forEachRemaining(l -> lines.add(new CaptureLine(l.hostMicros(), l.line())));
    return new Capture(header.with("note", "simulated: no pump was tested"), lines, 0);
  }

  void calibrated(Calibration calibration) throws Exception {
    store(CalibrationTree.of(calibration));
    calibrations.add(calibration);
  }

  /** What somebody says was done. */
  void done(String asset, Inspection.Done done, Instant at) throws Exception {
    String by = done.work() == Work.STERILISATION ? "ward staff" : "N. Osei";
    Inspection.Said said =
        new Inspection.Said(asset, done, by, new Inspection.More(Optional.empty(), List.of()));
    String digest = Sha256.hex(Canonical.bytes(InspectionTree.said(said)));
    store(InspectionTree.of(new Inspection(ResultId.of(digest, 1), said, at)));
  }

  private void store(ObjectNode document) throws Exception {
    if (archive.isPresent()) {
      archive.get().store(document);
      documents++;
    }
  }

  void done(String asset, Work work, Instant at) throws Exception {
    LocalDate day = at.atZone(java.time.ZoneOffset.UTC).toLocalDate();
    done(asset, new Inspection.Done(work, day, true), at);
  }
}
