package org.thumbseal.json;

import java.util.List;
import java.util.Optional;
import java.util.Set;
import org.thumbseal.json.DocumentView.Measured;
import org.thumbseal.quantity.Quantity;
import org.thumbseal.quantity.StandardAtmosphere;
import org.thumbseal.record.ResultDocument;
import org.thumbseal.seek.Level;
import org.thumbseal.seek.StationTest;
import org.thumbseal.seek.StationTest.Air;
import org.thumbseal.seek.StationTest.Decay;
import org.thumbseal.seek.StationTest.Source;
import org.thumbseal.seek.StationTest.Vacuum;
import tools.jackson.databind.node.ObjectNode;

/**
 * Takes from the result of a test what a leak search needs. The seal is the caller's to check.
 *
 * <p>Lines of the budget of the maximum that turn the whole scale of the sensor (its tolerance, the
 * gain of a calibration, drift) are common to all tests; reading, zero, resolution and linearity
 * are taken as this test's own. Without a budget all of it is.
 */
public final class StationTestReader {
  private static final Set<String> OF_THE_SCALE =
      Set.of("sensor", "calibration-line", "calibration-reference", "calibration-drift");

  private static final Set<String> INVALIDATING =
      Set.of(
          "sensor-fault",
          "occlusion-slipped",
          "released-early",
          "gap-in-test",
          "range-clipped",
          "zero-drift",
          "not-blocked");

  /** Below this rise time the verdict takes the sensor for faulty, s. */
  private static final double QUICKEST_OF_A_JAR = 0.3;

  /** Marks of a jar: +-3 %, rectangular (common practice). */
  private static final double VOLUME = 0.03 / Math.sqrt(3);

  /** The maximum is a mean over so much, s. */
  private static final double SHORTEST_HOLD = 1;

  private static final double SECONDS_A_MINUTE = 60;
  private static final double MILLILITRES = 1_000;

  private final DocumentView view;
  private final Place place;

  /**
   * Where the test was made.
   *
   * @param station counted from 0 at the patient end
   * @param withJar whether the jar was in the path; else the volume was that of a hose, and no flow
   *     can be told
   * @param litres volume of the jar, L, where it was said and the result does not name it
   */
  public record Place(int station, boolean withJar, Optional<Double> litres) {}

  private StationTestReader(ObjectNode document, Place place) {
    this.view = DocumentView.of(document);
    this.place = place;
  }

  /**
   * Reads it.
   *
   * @param source which document
   * @param place where was blocked
   * @throws JsonRefusedException with half a sentence if it is of no use for a search
   */
  public static StationTest read(ObjectNode document, Source source, Place place)
      throws JsonRefusedException {
    return new StationTestReader(document, place).read(source);
  }

  private StationTest read(Source source) throws JsonRefusedException {
    if (!view.text("/kind").orElse("").equals(ResultDocument.KIND)) {
      throw new JsonRefusedException("is not the result of a test");
    }
    if (view.text("/verdict").orElse("").equals("invalid") && !isOnlyQuick()) {
      throw new JsonRefusedException(
          "is invalid" + view.text("/reasons/0/text").map(why -> ": " + why).orElse(""));
    }
    if (brokeOff()) {
      throw new JsonRefusedException("broke off while the vacuum was still climbing");
    }
    Air air = new Air(ambient(), withJar(speed()), decay());
    return new StationTest(place.station(), source, vacuum(), air);
  }

  /**
   * A record that ends in the climb, for the sensor was pulled, has a highest vacuum but no
   * maximum. Whatever came last looks like a hold for a moment: shorter than the mean that a
   * maximum is, it is none.
   */
  private boolean brokeOff() {
    List<DocumentView> phases = view.list("/test/phases");
    if (phases.isEmpty()) {
      return false;
    }
    DocumentView last = phases.get(phases.size() - 1);
    double lasted = last.number("/end").orElse(0.0) - last.number("/start").orElse(0.0);
    String phase = last.text("/phase").orElse("");
    return phase.equals("rise") || (phase.equals("hold") && lasted < SHORTEST_HOLD);
  }

  /**
   * Whether a test without the jar is invalid only because no pump empties a jar so fast: hoses it
   * does, and its plateau is as good as any. A fault that the sensor reports would be a second one.
   */
  private boolean isOnlyQuick() {
    List<String> invalidating =
        view.list("/reasons").stream()
            .flatMap(reason -> reason.text("/code").stream())
            .filter(INVALIDATING::contains)
            .toList();
    boolean quick =
        view.number("/measurements/riseTime/value").filter(t -> t < QUICKEST_OF_A_JAR).isPresent();
    return !place.withJar() && quick && invalidating.equals(List.of("sensor-fault"));
  }

  private Vacuum vacuum() throws JsonRefusedException {
    Quantity stated =
        quantity("/measurements/maximumVacuum", "kPa")
            .orElseThrow(
                () -> new JsonRefusedException("has no maximum: hold until the vacuum stands"));
    double limit =
        view.number("/criteria/maximumVacuumLimit/value")
            .orElseThrow(() -> new JsonRefusedException("names no limit for the maximum"));
    return new Vacuum(level(stated), stated, limit);
  }

  private Level level(Quantity stated) {
    double common = 0;
    double own = 0;
    for (DocumentView line : view.list("/budgets/maximumVacuum/contributions")) {
      double part = line.number("/contribution").orElse(0.0);
      boolean scale = OF_THE_SCALE.contains(line.text("/name").orElse(""));
      common += scale ? part * part : 0;
      own += scale ? 0 : part * part;
    }
    boolean known = common + own > 0;
    double vacuum = stated.value();
    double relative = known && vacuum != 0 ? Math.sqrt(common) / Math.abs(vacuum) : 0;
    return new Level(
        vacuum,
        known ? Math.sqrt(own) : stated.standardUncertainty(),
        new Level.Scale(sensor(), relative));
  }

  /** A sensor that was calibrated between two tests has another scale. */
  private String sensor() {
    return view.text("/test/sensor/id").orElse("")
        + " "
        + view.text("/test/sensor/calibration/id").orElse("uncalibrated");
  }

  private double ambient() {
    return quantity("/test/ambient/quantity", "kPa")
        .map(Quantity::value)
        .orElse(StandardAtmosphere.SEA_LEVEL_PASCALS / 1_000);
  }

  private Optional<Quantity> withJar(Optional<Quantity> flow) {
    return flow.filter(q -> place.withJar());
  }

  /** From the result; else from the speed over the volume, where the volume is said. */
  private Optional<Quantity> speed() {
    return quantity("/measurements/pumpingSpeed", "L/min").or(this::speedByVolume);
  }

  private Optional<Quantity> speedByVolume() {
    return view.isTrue("/diagnostics/pumpModel/trusted")
        ? quantity("/diagnostics/pumpModel/speedOverVolume", "1/s")
            .flatMap(rate -> place.litres().map(v -> inJar(rate, SECONDS_A_MINUTE * v, "L/min")))
        : Optional.empty();
  }

  private Optional<Decay> decay() {
    boolean upper = view.text("/measurements/decayRate/bound").isPresent();
    return withJar(leak()).map(leak -> new Decay(leak, upper));
  }

  private Optional<Quantity> leak() {
    return quantity("/measurements/leakRate", "mL/min").or(this::leakByVolume);
  }

  private Optional<Quantity> leakByVolume() {
    double air = view.number("/diagnostics/decay/airAt/value").orElse(ambient());
    return quantity("/measurements/decayRate", "kPa/min")
        .flatMap(rate -> place.litres().map(v -> inJar(rate, MILLILITRES * v / air, "mL/min")));
  }

  private static Quantity inJar(Quantity perVolume, double factor, String unit) {
    double value = factor * perVolume.value();
    double own = factor * perVolume.standardUncertainty();
    return new Quantity(value, unit, StrictMath.hypot(own, VOLUME * value));
  }

  private Optional<Quantity> quantity(String place, String unit) {
    return view.quantity(place)
        .filter(q -> q.unit().equals(unit))
        .map(q -> new Quantity(q.value(), unit, half(q)));
  }

  private static double half(Measured measured) {
    return measured.expanded().orElse(0.0) / Quantity.COVERAGE_FACTOR;
  }
}
