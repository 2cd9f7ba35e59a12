package org.thumbseal.cli;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.thumbseal.index.IndexedCorrection;
import org.thumbseal.index.IndexedQuantity;
import org.thumbseal.index.IndexedTest;
import org.thumbseal.index.Records;
import org.thumbseal.index.RecordsException;
import org.thumbseal.refer.Deed;
import org.thumbseal.refer.Referral;
import org.thumbseal.refer.ReferredTest;
import org.thumbseal.refer.ReferredTest.Looked;
import org.thumbseal.refer.ReferredTest.Outcome;
import org.thumbseal.refer.ReferredTest.Seen;
import org.thumbseal.refer.ReferredTest.Suggested;
import org.thumbseal.refer.ReferredTest.Value;
import org.thumbseal.refer.Source;
import org.thumbseal.report.Report;

/**
 * What the records tell of one pump that is handed on, as far as a day.
 *
 * @param records the index
 * @param files where the documents lie
 */
record ReferralRecord(Records records, QuotedFiles files) {
  private static final List<String> NAMES = List.of("riseTime", "maximumVacuum", "pumpingSpeed");

  /**
   * A referral with what is drawn of it.
   *
   * @param referral the facts
   * @param reports of the tests that are drawn, in their order
   */
  record Drawn(Referral referral, List<Report> reports) {
    /** Whether the records tell anything at all. */
    boolean isEmpty() {
      return referral.tests().isEmpty() && referral.deeds().isEmpty();
    }
  }

  Drawn of(Referral.Subject subject) throws RecordsException {
    Set<String> corrected =
        records.corrections(subject.asset()).stream()
            .map(IndexedCorrection::result)
            .collect(Collectors.toSet());
    List<ReferredTest> tests = new ArrayList<>();
    Map<Source, IndexedTest> indexed = new HashMap<>();
    for (IndexedTest test : records.tests(subject.asset())) {
      if (test.startedAt().filter(at -> at.isAfter(subject.made())).isEmpty()) {
        ReferredTest referred = test(test, corrected.contains(test.id()));
        tests.add(referred);
        indexed.put(referred.source(), test);
      }
    }
    Referral referral = new Referral(subject, tests, deeds(subject));
    List<Report> reports =
        referral.drawn().stream()
            .flatMap(test -> Stream.ofNullable(indexed.get(test.source())))
            .map(files::report)
            .toList();
    return new Drawn(referral, reports);
  }

  private List<Deed> deeds(Referral.Subject subject) throws RecordsException {
    LocalDate today = LocalDate.ofInstant(subject.made(), subject.zone());
    return new DeedRecord(records, files, subject.zone())
        .of(subject.asset()).stream().filter(deed -> !deed.on().isAfter(today)).toList();
  }

  static Source source(IndexedTest.Origin origin) {
    String path = origin.path();
    return new Source(path.substring(path.lastIndexOf('/') + 1), origin.digest(), origin.kid());
  }

  private static ReferredTest test(IndexedTest test, boolean corrected) {
    return new ReferredTest(
        test.startedAt(),
        new Outcome(test.verdict(), test.standing().voided(), test.standing().note(), corrected),
        seen(test.details()),
        values(test),
        source(test.origin()));
  }

  private static Seen seen(IndexedTest.Details details) {
    return new Seen(
        details.findings().stream().map(f -> new Suggested(f.code(), f.confidence())).toList(),
        details.checks().stream()
            .map(check -> new Looked(check.item(), check.state(), check.part(), check.reason()))
            .toList());
  }

  private static Map<String, Value> values(IndexedTest test) {
    Map<String, Value> values = new HashMap<>();
    for (String name : NAMES) {
      Optional<IndexedQuantity> quantity = test.quantity(name);
      quantity.ifPresent(
          q ->
              values.put(
                  name, new Value(q.value(), q.expanded(), q.unit(), q.bound().isPresent())));
    }
    return values;
  }
}
