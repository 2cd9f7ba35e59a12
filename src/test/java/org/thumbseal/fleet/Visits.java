package org.thumbseal.fleet;

import java.time.Duration;
import java.time.Instant;
import java.time.LocalDate;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Random;
import org.thumbseal.care.Work;
import org.thumbseal.grade.Verdict;
import org.thumbseal.simulate.Line;
import org.thumbseal.simulate.Plant;
import org.thumbseal.simulate.Scenario;
import org.thumbseal.simulate.Script;
import org.thumbseal.simulate.Weather;

/** What a technician does to one pump over the years. */
final class Visits {
  private static final double MISSED = 0.02;
  private static final double SLIPPED = 0.02;
  private static final int INFECTIOUS = 300;

  private final Life life;
  private final BenchSensor sensor;
  private final Keeper keeper;
  private final Agenda agenda;
  private final Random random;

  Visits(Life life, BenchSensor sensor, Keeper keeper, Agenda agenda) {
    this.life = life;
    this.sensor = sensor;
    this.keeper = keeper;
    this.agenda = agenda;
    this.random = life.random();
  }

  void plan() {
    Card card = life.card();
    int inspection = random.nextInt(12);
    int forgotten = random.nextInt(8);
    for (int month = 0; month < Hospital.MONTHS; month++) {
      LocalDate day = Hospital.FIRST.plusMonths(month).withDayOfMonth(card.ward().day());
      if (day.isBefore(card.inService()) || !life.isTested(month)) {
        continue;
      }
      Instant at = Hospital.at(day.plusDays(random.nextInt(2)), 8 * 60 + random.nextInt(400));
      if (random.nextDouble() >= MISSED) {
        agenda.put(at, () -> round(at));
      }
      boolean skipped = forgotten == 0 && month > Hospital.MONTHS - 14;
      if (month % 12 == inspection && !skipped) {
        agenda.put(at.plusSeconds(5400), () -> inspected(at.plusSeconds(5400)));
      }
      Instant clean = at.plusSeconds(3600);
      if (!skipped || month < Hospital.MONTHS - 3) {
        agenda.put(clean, () -> keeper.done(card.id(), Work.STERILISATION, clean));
      }
      if (random.nextInt(INFECTIOUS) == 0) {
        Instant used = at.plus(Duration.ofDays(9));
        agenda.put(used, () -> keeper.done(card.id(), Work.INFECTIOUS_CASE, used));
        Instant soon = used.plus(Duration.ofHours(5));
        agenda.put(soon, () -> keeper.done(card.id(), Work.STERILISATION, soon));
      }
    }
  }

  private void inspected(Instant at) throws Exception {
    keeper.done(life.card().id(), Work.YEARLY_INSPECTION, at);
  }

  /** The monthly test; again where it could not be judged, or was too near to tell. */
  private void round(Instant at) throws Exception {
    Map<String, String> checks = checks(at);
    Verdict verdict = test(at, checks);
    for (int again = 1; again <= 2 && !decides(verdict); again++) {
      verdict = test(at.plusSeconds(600L * again), sound());
    }
    if (verdict == Verdict.FAIL) {
      Instant mended = at.plus(Duration.ofDays(2L + random.nextInt(10)));
      agenda.put(mended, () -> mend(mended));
    }
  }

  private static boolean decides(Verdict verdict) {
    return verdict == Verdict.PASS || verdict == Verdict.FAIL;
  }

  /** A part is put in, or the workshop overhauls it; then it is tested again. */
  private void mend(Instant at) throws Exception {
    double month = Hospital.month(at);
    Map<String, String> checks = sound();
    if (life.pump().culprit().isPresent()) {
      String item = life.pump().culprit().get();
      checks.put("check-" + item, "replaced; part: " + part(item) + "; reason: test failed");
    } else {
      keeper.done(life.card().id(), Work.REPAIR, at.minusSeconds(3600));
    }
    life.pump().overhauled(month);
    test(at, checks);
  }

  private String part(String item) {
    return switch (item) {
      case "gasket" -> life.card().gasket();
      case "filter" -> "Bacterial filter";
      case "tubing" -> "Silicone tubing 8 mm";
      default -> "Jar 2 L";
    };
  }

  private static Map<String, String> sound() {
    Map<String, String> facts = new LinkedHashMap<>();
    for (String item : new String[] {"gasket", "jar", "tubing", "filter", "cord", "outside"}) {
      facts.put("check-" + item, "ok");
    }
    return facts;
  }

  /** Gaskets go every three years or so, tubing every two, filters when they are tired. */
  private Map<String, String> checks(Instant at) {
    Map<String, String> checks = sound();
    double month = Hospital.month(at);
    if (life.pump().filterIsTired(month)) {
      life.pump().newFilter(month);
      replaced(checks, "filter", "discoloured");
    }
    if (random.nextInt(40) == 0) {
      life.pump().newGasket(month);
      replaced(checks, "gasket", "hard");
    }
    if (random.nextInt(24) == 0) {
      replaced(checks, "tubing", "kinked");
    }
    return checks;
  }

  private void replaced(Map<String, String> checks, String item, String why) {
    checks.put("check-" + item, "replaced; part: " + part(item) + "; reason: " + why);
  }

  private Verdict test(Instant at, Map<String, String> said) throws Exception {
    double month = Hospital.month(at);
    Plant plant = life.pump().plant(month, weather(month), random);
    Map<String, String> facts = new LinkedHashMap<>();
    facts.put("source", "serial");
    facts.put("asset", life.card().id());
    facts.put("jar-l", life.pump().litres(month) + "");
    facts.put("rated-l-min", Long.toString(life.card().ratedLitresPerMinute()));
    facts.putAll(said);
    Scenario scenario =
        new Scenario(plant, sensor.on(month), Line.CLEAN, script(plant), random.nextLong());
    return keeper.test(scenario, at, facts);
  }

  /** A technician waits until the needle rests; now and then the thumb is too early away. */
  private Script script(Plant plant) {
    double tau = plant.jar().cubicMetres() / plant.pump().speed();
    double held = Math.min(90, Math.max(12, 7 * tau));
    double blocked = random.nextDouble() < SLIPPED ? 0.6 * tau : held;
    return Script.quiet(4 + random.nextDouble())
        .pumpOn(5 + random.nextDouble())
        .block(blocked)
        .release(2)
        .pumpOff(2);
  }

  /** Air pressure scatters by 0.6 kPa about that of 120 m; the room is warmer in summer. */
  private Weather weather(double month) {
    double pascals = 99_890 + 600 * random.nextGaussian();
    double celsius = 23 + 3 * Math.sin(2 * Math.PI * month / 12) + random.nextGaussian();
    return new Weather(Math.rint(pascals), Math.rint(celsius * 10) / 10);
  }
}
