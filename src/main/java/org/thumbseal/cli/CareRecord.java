package org.thumbseal.cli;

import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Collectors;
import org.thumbseal.care.CaredFor;
import org.thumbseal.care.Cause;
import org.thumbseal.care.Deed;
import org.thumbseal.care.Deed.Outcome;
import org.thumbseal.care.Due;
import org.thumbseal.care.Dues;
import org.thumbseal.care.Intervals;
import org.thumbseal.care.Work;
import org.thumbseal.index.IndexedCalibration;
import org.thumbseal.index.IndexedWork;
import org.thumbseal.index.LastVerdict;
import org.thumbseal.index.Records;
import org.thumbseal.index.RecordsException;
import org.thumbseal.register.Register;
import org.thumbseal.register.RegisteredAsset;
import org.thumbseal.register.Status;

/** Brings together what the records tell and what the register asks for. */
final class CareRecord {
  private final Records records;
  private final ZoneId zone;

  CareRecord(Records records, ZoneId zone) {
    this.records = records;
    this.zone = zone;
  }

  /** Everything that will be due, pumps and sensors, the earliest first. */
  List<Due> dues(Optional<Register> register, LocalDate today) throws RecordsException {
    List<Due> all = new ArrayList<>(Dues.of(pumps(register), deeds(today), today));
    all.addAll(sensors(today));
    all.sort(Comparator.comparing(due -> due.term().on()));
    return all;
  }

  /**
   * What will be due on each pump, by its id, also on those of which there are tests though the
   * register does not name them. Of those only the test counts, and other work that was ever
   * recorded: whether they are to be inspected here nobody said.
   */
  Map<String, List<Due>> ofPumps(Optional<Register> register, LocalDate today)
      throws RecordsException {
    Map<String, CaredFor> listed = new LinkedHashMap<>();
    register.ifPresent(r -> r.assets().forEach(asset -> listed.put(asset.id(), pump(asset))));
    List<CaredFor> pumps = new ArrayList<>(listed.values());
    for (String asset : records.assets()) {
      if (!listed.containsKey(asset)) {
        pumps.add(CaredFor.known(asset));
      }
    }
    return Dues.of(pumps, deeds(today), today).stream()
        .filter(due -> listed.containsKey(due.pump().id()) || isKept(due))
        .collect(Collectors.groupingBy(due -> due.pump().id()));
  }

  private static boolean isKept(Due due) {
    return due.work() == Work.OCCLUSION_TEST || due.term().cause() != Cause.NEVER_DONE;
  }

  /** Those of the register that are in use; without one, those of which there are tests. */
  private List<CaredFor> pumps(Optional<Register> register) throws RecordsException {
    if (register.isPresent()) {
      return register.get().assets().stream()
          .filter(asset -> asset.status() == Status.IN_USE)
          .map(CareRecord::pump)
          .toList();
    }
    return records.assets().stream().map(CaredFor::known).toList();
  }

  private static CaredFor pump(RegisteredAsset asset) {
    RegisteredAsset.Intervals months = asset.intervals();
    Intervals intervals = new Intervals(months.check(), months.inspection(), months.sterilise());
    return new CaredFor(
        asset.id(),
        asset.label().description().orElse(""),
        asset.label().location().orElse(""),
        new CaredFor.Terms(asset.inService(), intervals));
  }

  /** The last of each kind up to the end of a day. */
  private List<Deed> deeds(LocalDate today) throws RecordsException {
    List<Deed> deeds = new ArrayList<>();
    Instant end = today.plusDays(1).atStartOfDay(zone).toInstant();
    records.lastVerdicts(end).stream()
        .sorted(Comparator.comparing(LastVerdict::at))
        .forEach(last -> deeds.add(test(last)));
    for (IndexedWork work : records.lastWorks(today)) {
      Work.of(work.work()).ifPresent(known -> deeds.add(deed(work, known)));
    }
    return deeds;
  }

  private Deed test(LastVerdict last) {
    Outcome outcome =
        switch (last.verdict()) {
          case "pass" -> Outcome.IN_ORDER;
          case "fail" -> Outcome.NOT_IN_ORDER;
          default -> Outcome.UNDECIDED;
        };
    LocalDate day = LocalDate.ofInstant(last.at(), zone);
    return new Deed(last.asset(), Work.OCCLUSION_TEST, day, outcome);
  }

  private static Deed deed(IndexedWork done, Work work) {
    boolean inOrder = done.said().inOrder().orElse(true);
    return new Deed(
        done.asset(), work, done.on(), inOrder ? Outcome.IN_ORDER : Outcome.NOT_IN_ORDER);
  }

  private List<Due> sensors(LocalDate today) throws RecordsException {
    Map<String, IndexedCalibration> last = new LinkedHashMap<>();
    Instant end = today.plusDays(1).atStartOfDay(zone).toInstant();
    records.calibrations(Optional.empty()).stream()
        .filter(c -> c.calibratedAt().isBefore(end))
        .forEach(c -> last.put(c.sensor(), c));
    List<Due> dues = new ArrayList<>();
    for (IndexedCalibration calibration : last.values()) {
      calibration.due().ifPresent(due -> dues.add(sensor(calibration, due, today)));
    }
    return dues;
  }

  private Due sensor(IndexedCalibration calibration, LocalDate due, LocalDate today) {
    LocalDate made = LocalDate.ofInstant(calibration.calibratedAt(), zone);
    Due.Term term = new Due.Term(due, Optional.of(made), Cause.TERM);
    return Dues.calibration(calibration.sensor(), term, today);
  }
}
