package org.thumbseal.fleet;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.Random;
import java.util.TreeMap;
import org.thumbseal.archive.Archive;
import org.thumbseal.grade.Verdict;
import org.thumbseal.seal.SigningKey;

/**
 * Sixty pumps in eleven wards over three years: every test is played by the simulator, graded by
 * the pipeline and sealed by the archive, in the order of time. The same seed gives the same tests;
 * the key is another one each time.
 */
public final class Hospital {
  /** Months of tests. */
  public static final int MONTHS = 36;

  /** The month counted as 0. */
  static final LocalDate FIRST = LocalDate.of(2023, 12, 1);

  /** The day on which everything is looked at: the round of November 2026 is over. */
  public static final LocalDate TODAY = LocalDate.of(2026, 11, 28);

  private final Random random;
  private final List<Life> lives = new ArrayList<>();
  private final Map<String, BenchSensor> sensors = new TreeMap<>();

  /** Draws the pumps. */
  public Hospital(long seed) {
    random = new Random(seed);
    List<Fate> fates = Fate.ofSixty();
    Collections.shuffle(fates, random);
    for (int i = 0; i < fates.size(); i++) {
      lives.add(life(i, fates.get(i)));
    }
    for (Ward ward : Ward.values()) {
      sensors.computeIfAbsent(ward.sensor(), id -> new BenchSensor(id, random));
    }
  }

  private Life life(int i, Fate fate) {
    double litres = i % 4 == 3 ? 1 : 2;
    WardPump pump = new WardPump(fate, litres, random);
    boolean late = i % 20 == 7;
    LocalDate inService =
        late ? TODAY.minusMonths(5 + i % 3) : FIRST.minusMonths(3 + random.nextInt(60));
    String id = String.format(Locale.ROOT, "SP-%03d", i + 1);
    long rated = 5 * (long) Math.ceil(pump.litresPerMinute() / 5);
    List<Ward> wards = List.of(Ward.values());
    Ward ward = wards.get(i % wards.size());
    return new Life(
        new Card(id, ward, litres, rated, inService), pump, new Random(random.nextLong()));
  }

  /** All pumps. */
  public List<Life> lives() {
    return List.copyOf(lives);
  }

  /** Lives through the years; gives how many documents were sealed. */
  public int live(Path results, SigningKey key) throws Exception {
    try (Archive archive = Archive.open(results, key)) {
      return live(new Keeper(Optional.of(archive), Map.of()));
    }
  }

  /**
   * Lives through the same years again, so that it is known what was done to each pump, without a
   * test being made: what came out of them is remembered.
   *
   * @param verdicts by {@link #mark}
   */
  public void remember(Map<String, Verdict> verdicts) throws Exception {
    live(new Keeper(Optional.empty(), verdicts));
  }

  /** By which a test is remembered. */
  public static String mark(String asset, Instant at) {
    return Keeper.mark(asset, at);
  }

  private int live(Keeper keeper) throws Exception {
    Agenda agenda = new Agenda();
    for (BenchSensor sensor : sensors.values().stream().toList()) {
      for (int year = 0; year < 3; year++) {
        Instant at = at(FIRST.plusYears(year), 7 * 60);
        double month = 12.0 * year;
        agenda.put(at, () -> keeper.calibrated(sensor.calibrated(at, month)));
      }
    }
    for (Life life : lives) {
      BenchSensor sensor = Objects.requireNonNull(sensors.get(life.card().ward().sensor()));
      new Visits(life, sensor, keeper, agenda).plan();
    }
    agenda.run(at(TODAY.plusDays(1), 0));
    return keeper.documents();
  }

  static Instant at(LocalDate day, int minute) {
    return day.atStartOfDay(ZoneOffset.UTC).toInstant().plus(Duration.ofMinutes(minute));
  }

  static double month(Instant at) {
    return Duration.between(at(FIRST, 0), at).toHours() / 730.5;
  }

  /** The register of pumps. */
  public void writeRegister(Path file) throws IOException {
    List<String> lines = new ArrayList<>();
    lines.add(
        "id,description,location,serial,jar_l,rated_l_min,in_service,status,sterilise_months");
    for (Life life : lives) {
      Card card = life.card();
      lines.add(
          String.join(
              ",",
              card.id(),
              '"' + card.description() + '"',
              card.ward().title(),
              "K-" + (20400 + 7 * lines.size()),
              card.litres() > 1 ? "2" : "1",
              Long.toString(card.ratedLitresPerMinute()),
              card.inService().toString(),
              life.status(),
              "1"));
    }
    Files.write(file, lines);
  }

  /** The list of spare parts. */
  public void writeStock(Path file) throws IOException {
    Files.write(
        file,
        List.of(
            "part,item,quantity,counted_on,minimum,lead_days,pack,on_order,used_per_month,note",
            "Bacterial filter,filter,14,2026-11-02,6,21,10,0,,hydrophobic",
            "Silicone tubing 8 mm,tubing,3,2026-11-02,4,14,5,0,,2 m lengths",
            "Gasket 2 L jar,gasket,9,2026-11-02,3,42,5,0,,",
            "Gasket 1 L jar,gasket,5,2026-11-02,2,42,5,5,,",
            "Jar 2 L,jar,1,2026-11-02,1,60,1,0,,",
            "Suction catheter 14 Fr,catheter,180,2026-11-02,60,14,50,0,90,used on wards"));
  }
}
