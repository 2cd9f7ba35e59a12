package org.thumbseal.daemon;

import java.time.Instant;
import java.time.temporal.ChronoUnit;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Consumer;
import org.jspecify.annotations.Nullable;
import org.thumbseal.capture.CaptureHeader;
import org.thumbseal.grade.Criteria;
import org.thumbseal.grade.Verdict;
import org.thumbseal.pipeline.GivenPump;
import org.thumbseal.pipeline.GradingSettings;
import org.thumbseal.pipeline.KnownPump;
import org.thumbseal.pipeline.KnownPumps;
import org.thumbseal.record.ResultDocument;
import org.thumbseal.visit.SaidStart;
import org.thumbseal.visit.StartedBy;
import org.thumbseal.visit.Visit;
import org.thumbseal.visit.VisitFacts;

/** What is said about the tests of one port, at the start of the program and at the bench. */
final class BenchSayings {
  private GradingSettings settings;
  private Visit visit = Visit.NONE;
  private Optional<String> sought = Optional.empty();
  private @Nullable SaidStart start;

  BenchSayings(GradingSettings settings) {
    this.settings = settings;
  }

  /** As the next test is graded. */
  GradingSettings settings() {
    return sought.isEmpty()
        ? settings
        : settings.withCriteriaOf(sought).withPump(pump -> GivenPump.NONE);
  }

  /** The pump whose leak is sought; its tests bear its limits, but neither its name nor its jar. */
  void seek(Optional<String> asset) {
    sought = asset;
  }

  /** Looks whether more is known of pumps now; whether it is. */
  boolean renew(Consumer<String> remark) {
    KnownPumps before = settings.pumps();
    KnownPumps now = before.now(remark);
    if (now != before) {
      settings = settings.withPumps(now);
    }
    return now != before;
  }

  void visit(Visit said) {
    visit = said;
  }

  void start(SaidStart said) {
    start = said;
  }

  void noStart() {
    start = null;
  }

  /** Who said the start that is not of the key. */
  StartedBy startedBy() {
    return start == null ? StartedBy.PAGE : start.by();
  }

  boolean hasStart() {
    return start != null;
  }

  /** What holds now: the pump of the command line where nobody names another. */
  Visit visit() {
    return new Visit(visit.asset().or(settings().pump()::asset), visit.checks());
  }

  /** A visit ends with its result; what could not be judged has to be repeated. */
  void graded(List<ResultDocument> results) {
    start = null;
    boolean judged = results.stream().anyMatch(r -> r.grade().verdict() != Verdict.INVALID);
    visit = judged ? Visit.NONE : visit;
  }

  private Criteria.Equipment known() {
    return visit()
        .asset()
        .flatMap(settings.pumps()::of)
        .map(KnownPump::equipment)
        .orElse(Criteria.Equipment.UNKNOWN);
  }

  /** All of it, so that a replay needs no options. */
  CaptureHeader header(Instant wallClock, String source) {
    Map<String, String> facts = new LinkedHashMap<>();
    facts.put("source", source);
    settings.sensor().lines().ifPresent(lines -> facts.put(CaptureHeader.FORMAT, lines.text()));
    settings.sensor().id().ifPresent(id -> facts.put("sensor", id));
    visit().asset().ifPresent(asset -> facts.put("asset", asset));
    sought.ifPresent(asset -> facts.put(CaptureHeader.LEAK_SEARCH, asset));
    settings.place().ambientKilopascals().ifPresent(v -> facts.put("ambient-kpa", v.toString()));
    settings.place().altitudeMetres().ifPresent(v -> facts.put("altitude-m", v.toString()));
    Criteria.Equipment known = known();
    settings()
        .pump()
        .jarLitres()
        .or(known::jarLitres)
        .ifPresent(v -> facts.put("jar-l", v.toString()));
    known.ratedLitresPerMinute().ifPresent(v -> facts.put(CaptureHeader.RATED_SPEED, v.toString()));
    if (settings().pump().pinched()) {
      facts.put("pinched", "true");
    }
    facts.putAll(VisitFacts.of(visit()));
    if (start != null) {
      facts.put(SaidStart.KEY, start.text());
    }
    return new CaptureHeader(wallClock.truncatedTo(ChronoUnit.MILLIS), facts);
  }
}
