package org.thumbseal.report;

import java.util.List;
import java.util.Optional;
import java.util.Set;
import org.thumbseal.json.DocumentView;
import org.thumbseal.json.DocumentView.Measured;
import org.thumbseal.pipeline.CurveFrame;

/** What of a result document can be drawn: limits, phases, and the frame of its curve. */
public final class TestShape {
  /** Of the time before the blocking, s. */
  private static final double BEFORE = 6;

  /** Of the release, s. */
  private static final double AFTER = 4;

  private static final double SHORTEST = 15;
  private static final double LONGEST = 90;

  /** An absolute sensor reads this vacuum at no pressure, kPa; gains turn about it. */
  private static final double AT_REST = -101.325;

  private static final double HIGHEST_LIMIT = 200;
  private static final Set<String> BLOCKED = Set.of("rise", "hold", "decay");
  private static final int MOST_PHASES = 50;

  private final DocumentView document;
  private final double origin;

  /** The shape of a result. */
  public TestShape(DocumentView document) {
    this.document = document;
    this.origin = document.number("/test/occludedAt").orElse(0.0);
  }

  /**
   * A phase.
   *
   * @param code its name in documents
   * @param from s since the origin of the curve
   * @param to likewise
   */
  public record PhaseOf(String code, double from, double to) {
    boolean isBlocked() {
      return BLOCKED.contains(code);
    }
  }

  /** Whether the inlet was blocked at all; else the curve counts from the first sample. */
  public boolean isBlocked() {
    return document.number("/test/occludedAt").isPresent();
  }

  /** The phases in order. */
  public List<PhaseOf> phases() {
    return document.list("/test/phases").stream()
        .limit(MOST_PHASES)
        .flatMap(phase -> phase(phase).stream())
        .toList();
  }

  private Optional<PhaseOf> phase(DocumentView phase) {
    double from = phase.number("/start").orElse(Double.NaN) - origin;
    double to = phase.number("/end").orElse(Double.NaN) - origin;
    return phase.text("/phase").filter(code -> to > from).map(code -> new PhaseOf(code, from, to));
  }

  /** The name of the phase at a time on the curve; empty before the first and after the last. */
  public String phaseAt(double seconds) {
    return phases().stream()
        .filter(phase -> seconds >= phase.from() && seconds < phase.to())
        .map(PhaseOf::code)
        .findFirst()
        .orElse("");
  }

  /** What is drawn of the recording. */
  public Span span() {
    List<PhaseOf> phases = phases();
    double first = phases.stream().mapToDouble(PhaseOf::from).min().orElse(-BEFORE);
    double last = phases.stream().mapToDouble(PhaseOf::to).max().orElse(LONGEST);
    double from = isBlocked() ? Math.min(-1, Math.max(first, -BEFORE)) : first;
    double end = isBlocked() ? Math.min(last, blockedUntil() + AFTER) : last;
    return new Span(from, from + Math.min(LONGEST, Math.max(SHORTEST, end - from)));
  }

  /** When the inlet was opened or the record ends, s since the origin. */
  double blockedUntil() {
    return phases().stream().filter(PhaseOf::isBlocked).mapToDouble(PhaseOf::to).max().orElse(0);
  }

  /** When the pump stopped pulling at the blocked inlet, s since the origin. */
  double pulledUntil() {
    return phases().stream()
        .filter(phase -> phase.isBlocked() && !phase.code().equals("decay"))
        .mapToDouble(PhaseOf::to)
        .max()
        .orElse(0);
  }

  /** How the readings of its recording become this curve. */
  public CurveFrame frame() {
    boolean absolute = document.text("/test/sensor/reference").orElse("").equals("absolute");
    return new CurveFrame(
        document.number("/diagnostics/sensorClock/rate").orElse(1.0),
        origin,
        document.number("/diagnostics/zero/quantity/value").orElse(0.0),
        document.number("/test/sensor/calibration/gain").orElse(1.0),
        absolute ? AT_REST : 0);
  }

  /** Vacuum with the inlet open, kPa; 0 where it was not measured. */
  double open() {
    return document.number("/measurements/openVacuum/value").orElse(0.0);
  }

  /** The rise that was asked for, kPa. */
  Optional<Double> rise() {
    return limit("/criteria/rise");
  }

  /** The vacuum that the rise has to come to, kPa. */
  Optional<Double> riseLevel() {
    return rise().map(rise -> open() + rise);
  }

  /** The time it has for that, s. */
  Optional<Double> riseSeconds() {
    return limit("/criteria/riseTimeLimit");
  }

  /** The least maximum vacuum, kPa. */
  Optional<Double> maximum() {
    return limit("/criteria/maximumVacuumLimit");
  }

  /** Ambient pressure by which the limits were lowered, kPa; absent where they stand as set. */
  Optional<Double> adjustedTo() {
    return document
        .number("/criteria/altitudeFactor")
        .flatMap(factor -> document.number("/test/ambient/quantity/value"));
  }

  private Optional<Double> limit(String place) {
    return document
        .quantity(place)
        .map(Measured::value)
        .filter(value -> value > 0 && value <= HIGHEST_LIMIT);
  }
}
