package org.thumbseal.cli;

import java.time.Instant;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.thumbseal.care.Due;
import org.thumbseal.history.History;
import org.thumbseal.history.Outlook;
import org.thumbseal.history.PastTest;
import org.thumbseal.history.Pump;
import org.thumbseal.index.Records;
import org.thumbseal.index.RecordsException;
import org.thumbseal.register.Register;

/**
 * Weighs all pumps. They are read a few at a time and weighed on all processors, and of each no
 * more is kept than a page shows: there may be hundreds of thousands of tests.
 *
 * @param records open
 * @param today as of when
 * @param zone whose calendar counts
 */
record FleetOutlooks(Records records, Instant today, ZoneId zone) {
  private static final int AT_ONCE = 32;

  /** A pump as it was read. */
  private record Read(Pump pump, List<PastTest> tests) {}

  /** All of the register, and all of which there are tests; worst first. */
  List<Outlook> all(Optional<Register> register) throws RecordsException {
    Map<String, List<Due>> dues =
        new CareRecord(records, zone).ofPumps(register, today.atZone(zone).toLocalDate());
    List<Outlook> all = new ArrayList<>();
    List<Read> read = new ArrayList<>();
    for (Pump pump : pumps(register)) {
      read.add(new Read(pump, PastTests.of(records, pump.id())));
      if (read.size() == AT_ONCE) {
        weigh(read, dues, all);
        read.clear();
      }
    }
    weigh(read, dues, all);
    return Outlook.ordered(all);
  }

  /** Those of the register, and those of which there are tests. */
  private Iterable<Pump> pumps(Optional<Register> register) throws RecordsException {
    Map<String, Pump> pumps = new LinkedHashMap<>();
    register.ifPresent(r -> r.assets().forEach(a -> pumps.put(a.id(), HistoryOptions.pump(a))));
    for (String asset : records.assets()) {
      pumps.computeIfAbsent(asset, Pump::unlisted);
    }
    return pumps.values();
  }

  private void weigh(List<Read> read, Map<String, List<Due>> dues, List<Outlook> all) {
    all.addAll(read.parallelStream().map(one -> weighed(one, dues)).toList());
  }

  private Outlook weighed(Read one, Map<String, List<Due>> dues) {
    History history = History.of(one.pump(), one.tests(), today).recent();
    return Outlook.of(history, dues.getOrDefault(one.pump().id(), List.of()));
  }
}
