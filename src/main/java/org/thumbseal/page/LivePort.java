package org.thumbseal.page;

import java.time.Instant;
import java.time.temporal.ChronoUnit;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import org.thumbseal.daemon.PortState;
import org.thumbseal.daemon.Started;
import org.thumbseal.json.Decimals;
import org.thumbseal.json.Json;
import org.thumbseal.phase.Phase;
import org.thumbseal.phase.PhaseEvent;
import org.thumbseal.pipeline.GradingSettings;
import org.thumbseal.pipeline.KnownPumps;
import org.thumbseal.pipeline.LiveStream;
import org.thumbseal.record.ResultDocument;
import org.thumbseal.sample.StreamEvent;
import org.thumbseal.sample.StreamEvent.Gap;
import org.thumbseal.sample.StreamEvent.Restart;
import org.thumbseal.sample.StreamEvent.Sample;
import org.thumbseal.visit.Visit;
import tools.jackson.databind.node.ArrayNode;
import tools.jackson.databind.node.ObjectNode;

/**
 * One port as the page shows it. The thread that takes its lines writes, the one that tells the
 * pages reads; a sample costs a few assignments.
 */
final class LivePort {
  /** The open vacuum is a mean over so much before the blocking, s. */
  private static final double OPEN_FOR = 2;

  /** What is nearer to the blocking may be part of it, s. */
  private static final double BEFORE_BLOCKING = 0.1;

  private final String name;
  private GradingSettings settings;
  private final DrawnCurve curve = new DrawnCurve();
  private final LiveScale scale = new LiveScale();
  private PortState link = PortState.ABSENT;
  private String linkText = "";
  private LineQuality quality = new LineQuality();
  private @Nullable LiveStream stream;
  private Instant wallClock = Instant.EPOCH;
  private ObjectNode facts = Json.object();
  private @Nullable Sample newest;
  private @Nullable Phase phase;
  private double phaseAt;
  private double phaseSeenAt;
  private double openVacuum = Double.NaN;
  private double blockedAt = Double.NaN;
  private Visit visit = Visit.NONE;
  private Optional<Started> started = Optional.empty();
  private @Nullable ObjectNode result;
  private Optional<ObjectNode> search = Optional.empty();

  LivePort(String name, GradingSettings settings) {
    this.name = name;
    this.settings = settings;
    facts = LiveFacts.unknown(settings);
  }

  synchronized void link(PortState now) {
    link = now;
  }

  synchronized void linkText(String text) {
    linkText = text;
  }

  synchronized void opened(Instant hostZero, LiveStream live) {
    wallClock = hostZero;
    stream = live;
    quality = new LineQuality();
    curve.clear();
    scale.forget();
    forgetTest();
    phase = null;
    newest = null;
  }

  synchronized void closed() {
    stream = null;
    phase = null;
    newest = null;
    facts = LiveFacts.unknown(graded());
  }

  synchronized void reading(StreamEvent event) {
    if (event instanceof Sample sample) {
      sample(sample);
    } else if (event instanceof Gap) {
      quality.gap();
    } else if (event instanceof Restart) {
      scale.forget();
    }
  }

  private void sample(Sample sample) {
    newest = sample;
    quality.sample(sample, phase == Phase.IDLE);
    scale.accept(sample, phase);
    if (curve.isDue(sample.seconds())) {
      curve.add(sample.seconds(), scale.vacuum(sample));
    }
  }

  synchronized void dropped(long lines) {
    quality.dropped(lines);
  }

  /** A line was taken; whether there is news about the line itself. */
  synchronized void line(long hostMicros) {
    LiveStream live = stream;
    if (live != null && quality.line(hostMicros)) {
      LiveFacts now = LiveFacts.of(live, settings);
      scale.know(now, settings, wallClock);
      ObjectNode tree = now.tree(graded(), scale.isCalibrated());
      ObjectNode line = quality.tree(live);
      scale.zero().ifPresent(zero -> LineQuality.put(line, "zero", zero, 3));
      tree.set("quality", line);
      facts = tree;
    }
  }

  synchronized void phase(PhaseEvent.Entered entered) {
    scale.entered(phase, entered.phase());
    phase = entered.phase();
    phaseAt = entered.seconds();
    phaseSeenAt = seenAt();
    if (phase == Phase.RISE) {
      blockedAt = phaseAt;
      openVacuum = curve.mean(phaseAt - OPEN_FOR, phaseAt - BEFORE_BLOCKING);
      result = null;
    } else if (phase == Phase.IDLE || phase == Phase.OPEN) {
      forgetTest();
    }
  }

  private void forgetTest() {
    openVacuum = Double.NaN;
    blockedAt = Double.NaN;
  }

  /** When the newest sample came, wall clock in ms. */
  private double seenAt() {
    Sample sample = newest;
    double after = sample == null ? 0 : sample.hostSeconds() * 1_000;
    return ChronoUnit.MICROS.between(Instant.EPOCH, wallClock) / 1e3 + after;
  }

  void graded(ResultDocument document) {
    ObjectNode tree = LiveResult.of(document);
    synchronized (this) {
      tree.put("seenAt", Decimals.round(seenAt(), 3)).put("stored", false);
      LineQuality.put(tree, "blockedAt", blockedAt, 4);
      tree.put("ofSearch", document.asset().isEmpty() && isSought());
      result = tree;
    }
  }

  private boolean isSought() {
    return search.filter(s -> s.path("standing").asString().equals("seeking")).isPresent();
  }

  /** The result is on the disk; one that was not graded in front of this page is not shown. */
  synchronized void stored(String id, String file) {
    ObjectNode shown = result;
    if (shown != null && shown.path("id").asString().equals(id)) {
      result = shown.deepCopy().put("stored", true).put("file", file);
    }
  }

  synchronized void visit(Visit now, Optional<Started> start) {
    visit = now;
    started = start;
    withoutSensor();
  }

  synchronized void search(Optional<ObjectNode> tree) {
    search = tree;
  }

  synchronized void pumps(KnownPumps now) {
    settings = settings.withPumps(now);
    withoutSensor();
  }

  /** With one, the facts are told anew all the time. */
  private void withoutSensor() {
    if (stream == null) {
      facts = LiveFacts.unknown(graded());
    }
  }

  /** As a test of the pump on the bench would be. */
  private GradingSettings graded() {
    return settings.withCriteriaOf(visit.asset());
  }

  /** All members but the curve. */
  synchronized ObjectNode tree() {
    ObjectNode node = Json.object().put("port", name);
    node.put("link", link.name().toLowerCase(java.util.Locale.ROOT)).put("linkText", linkText);
    node.setAll(facts);
    node.put("phase", phase == null ? "none" : phase.code());
    if (phase != null) {
      node.put("phaseAt", Decimals.round(phaseAt, 4));
      node.put("phaseSeenAt", Decimals.round(phaseSeenAt, 3));
    }
    number(node);
    LineQuality.put(node, "openVacuum", openVacuum, 3);
    LineQuality.put(node, "blockedAt", blockedAt, 4);
    node.set("visit", VisitTree.of(visit));
    started.ifPresent(s -> node.set("start", VisitTree.of(s)));
    if (result != null) {
      node.set("result", result);
    }
    search.ifPresent(tree -> node.set("search", tree));
    return node;
  }

  private void number(ObjectNode node) {
    Sample sample = newest;
    if (sample != null) {
      LineQuality.put(node, "vacuum", scale.vacuum(sample), 2);
      node.put("clock", Decimals.round(sample.seconds(), 3));
    }
    node.put("zeroKnown", scale.isZeroKnown());
  }

  /**
   * Adds the points since so many were drawn.
   *
   * @return how many are drawn now, ever
   */
  synchronized long points(long drawn, ArrayNode to) {
    to.addAll(curve.between(drawn, curve.drawn()));
    return curve.drawn();
  }

  /** Adds the points that are kept, up to so many ever drawn. */
  synchronized void pointsUntil(long drawn, ArrayNode to) {
    to.addAll(curve.between(0, drawn));
  }
}
