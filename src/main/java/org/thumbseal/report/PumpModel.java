package org.thumbseal.report;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.thumbseal.fit.PumpDown;
import org.thumbseal.json.DocumentView;

/**
 * The model of pump and jar that was laid through the rise, drawn anew from its parameters in the
 * document ({@link PumpDown}), and how far from it the true vacuum may lie.
 */
final class PumpModel {
  private static final String PLACE = "/diagnostics/pumpModel";

  /** Stands in where the ambient pressure is not known, as in the fit, kPa. */
  private static final double STANDARD_AMBIENT = 101.325;

  private static final double LONGEST = 300;
  private static final int STEPS = 300;
  private static final double COVERAGE = 2;

  /** Beyond, kPa, the line would only lead the eye astray. */
  private static final double LARGEST_MISFIT = 1.5;

  private final DocumentView document;
  private final TestShape shape;
  private final double ambient;

  private PumpModel(DocumentView document) {
    this.document = document;
    this.shape = new TestShape(document);
    this.ambient = document.number("/test/ambient/quantity/value").orElse(STANDARD_AMBIENT);
  }

  /**
   * The model at a time.
   *
   * @param seconds since the blocking
   * @param kilopascals vacuum by the model, kPa
   * @param expanded expanded uncertainty (k = 2) of the vacuum, kPa; NaN where it cannot be told
   */
  record At(double seconds, double kilopascals, double expanded) {
    boolean hasBand() {
      return expanded >= 0;
    }
  }

  /**
   * The model through the rise; empty where the document has none that can be drawn, or one that is
   * no picture of the rise.
   */
  static List<At> of(DocumentView document) {
    PumpModel model = new PumpModel(document);
    double end = Math.min(LONGEST, model.shape.pulledUntil());
    return model.misfit() < LARGEST_MISFIT && end > 0 && model.ambient > 1
        ? model.line(end)
        : List.of();
  }

  /** Why it is not to be relied on; empty where it is. */
  static Optional<String> distrust(DocumentView document) {
    return document.text(PLACE + "/why").filter(why -> !document.isTrue(PLACE + "/trusted"));
  }

  private List<At> line(double end) {
    PumpDown.Rise rise = new PumpDown.Rise(ambient, shape.open(), end);
    double rate = value("/speedOverVolume");
    double ultimate = value("/ultimatePressure") / ambient;
    double exchange = value("/heatExchangeTime");
    if (document.has(PLACE + "/leakOverVolume")) {
      double leak = value("/leakOverVolume");
      return line(PumpDown.leaking(rise), end, rate, ultimate, exchange, leak);
    }
    if (document.has(PLACE + "/restriction")) {
      double resistance = value("/restriction") / rate;
      return line(PumpDown.restricted(rise), end, rate, ultimate, exchange, resistance);
    }
    return line(PumpDown.tight(rise), end, rate, ultimate, exchange);
  }

  private double value(String name) {
    return document.number(PLACE + name + "/value").orElse(Double.NaN);
  }

  private List<At> line(PumpDown model, double end, double... parameters) {
    double ceiling = document.number(PLACE + "/heldAt/value").orElse(Double.POSITIVE_INFINITY);
    double step = end / STEPS;
    List<At> line = new ArrayList<>();
    for (int i = 0; i <= STEPS; i++) {
      double level = model.value(parameters, i * step);
      double slope = (model.value(parameters, (i + 0.5) * step) - level) / (step / 2);
      if (!Double.isFinite(level)) {
        return List.of();
      }
      boolean held = level > ceiling;
      double shown = held ? ceiling : level;
      line.add(new At(i * step, shown, expanded(shown, held ? 0 : slope)));
    }
    return line;
  }

  /**
   * Scale and zero of the sensor, the instant of the blocking, and the misfit of the model. The
   * errors that the budgets of the document give for the values are the same along the curve.
   */
  private double expanded(double level, double slope) {
    double scale = scale() * level;
    double zero = document.number("/diagnostics/zero/quantity/expandedUncertainty").orElse(0.0) / 2;
    double onset = contribution("/budgets/riseTime", "onset") * slope;
    double misfit = misfit();
    return COVERAGE * Math.sqrt(scale * scale + zero * zero + onset * onset + misfit * misfit);
  }

  private double misfit() {
    return document.number(PLACE + "/rmsMisfit/value").orElse(Double.NaN);
  }

  /** Standard uncertainty of the sensor's scale as a share of the vacuum. */
  private double scale() {
    double of = document.number("/measurements/maximumVacuum/value").orElse(0.0);
    return of > 0
        ? contribution("/budgets/maximumVacuum", "sensor", "calibration") / of
        : Double.NaN;
  }

  private double contribution(String budget, String... beginnings) {
    double squares = 0;
    for (DocumentView line : document.list(budget + "/contributions")) {
      String name = line.text("/name").orElse("");
      double u = line.number("/contribution").orElse(0.0);
      for (String beginning : beginnings) {
        squares += name.startsWith(beginning) ? u * u : 0;
      }
    }
    return Math.sqrt(squares);
  }
}
