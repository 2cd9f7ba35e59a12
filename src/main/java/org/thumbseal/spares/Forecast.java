package org.thumbseal.spares;

import java.time.LocalDate;
import java.time.temporal.ChronoUnit;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.Set;
import org.thumbseal.spares.Outlook.Left;

/** What is left of each part, and when more must be ordered. */
public final class Forecast {
  /** How sure the stock must not fall below the minimum; common practice, no published source. */
  public static final double CERTAINTY = 0.95;

  /** Use is counted so many days back at most, that it is of today's pumps. */
  public static final int LONGEST_DAYS = 730;

  private static final int HORIZON_DAYS = 730;

  /** What is replaced at a check of a pump; of anything else the records do not say a word. */
  private static final Set<String> RECORDED =
      Set.of("gasket", "jar", "tubing", "filter", "cord", "overflow", "outside");

  private final LocalDate today;
  private final Optional<LocalDate> since;
  private final int coverDays;

  /**
   * A forecast.
   *
   * @param today the day it is made
   * @param first day of the first test in the records; empty where there is none
   * @param coverDays days that an order is to last beyond its arrival, 1 or more
   */
  public Forecast(LocalDate today, Optional<LocalDate> first, int coverDays) {
    this.today = today;
    LocalDate earliest = today.minusDays(LONGEST_DAYS - 1L);
    this.since = first.filter(d -> !d.isAfter(today)).map(d -> d.isBefore(earliest) ? earliest : d);
    this.coverDays = coverDays;
  }

  /** Of all parts; uses after today are left out. */
  public Stock of(List<StockLine> lines, List<Use> uses) {
    List<Use> past = uses.stream().filter(u -> !u.day().isAfter(today)).toList();
    Matching matching = new Matching(lines, past);
    List<Outlook> parts = lines.stream().map(l -> part(l, matching.of(l))).toList();
    return new Stock(today, parts, matching.unclear());
  }

  private Outlook part(StockLine line, List<Use> uses) {
    Optional<Demand> demand = demand(line, uses);
    Left left = left(line, uses);
    int spare = left.now() + line.supply().onOrder() - line.supply().minimum();
    int lead = line.supply().leadDays();
    Optional<LocalDate> orderBy = demand.flatMap(d -> orderBy(d, spare, lead));
    boolean isDue = spare < 0 || orderBy.filter(d -> !d.isAfter(today)).isPresent();
    int ahead = demand.map(d -> d.atMost(lead + coverDays, CERTAINTY)).orElse(0);
    return new Outlook(
        line,
        left,
        demand,
        demand.map(d -> OptionalInt.of(d.atMost(lead, CERTAINTY))).orElse(OptionalInt.empty()),
        orderBy,
        isDue ? packs(ahead - spare, line.supply().pack()) : 0);
  }

  private Optional<Demand> demand(StockLine line, List<Use> uses) {
    if (line.saidPerMonth().isPresent()) {
      return line.saidPerMonth().map(SaidDemand::new);
    } else if (!RECORDED.contains(line.item()) && uses.isEmpty()) {
      return Optional.empty();
    }
    return since.map(day -> counted(uses, day));
  }

  private Demand counted(List<Use> uses, LocalDate from) {
    long count = uses.stream().filter(u -> u.foretells() && !u.day().isBefore(from)).count();
    return new CountedDemand((int) count, (int) ChronoUnit.DAYS.between(from, today) + 1);
  }

  /** Of what no check records, as many as were to be expected since. */
  private Left left(StockLine line, List<Use> uses) {
    LocalDate counted = line.count().on();
    double days = ChronoUnit.DAYS.between(counted, today);
    int used =
        line.saidPerMonth()
            .map(m -> (int) Math.round(m * days / Demand.MONTH))
            .orElseGet(() -> (int) uses.stream().filter(u -> u.day().isAfter(counted)).count());
    int left = line.count().quantity() - used;
    return new Left(Math.max(0, left), used, left < 0);
  }

  /**
   * The last day to order: the longest time over which use keeps within what is spare, less the
   * time until the order is there.
   */
  private Optional<LocalDate> orderBy(Demand demand, int spare, int lead) {
    int most = HORIZON_DAYS + lead;
    if (spare < 0) {
      return Optional.of(today);
    } else if (demand.atMost(most, CERTAINTY) <= spare) {
      return Optional.empty();
    }
    int good = 0;
    int bad = most;
    while (bad - good > 1) {
      int middle = (good + bad) / 2;
      if (demand.atMost(middle, CERTAINTY) <= spare) {
        good = middle;
      } else {
        bad = middle;
      }
    }
    return Optional.of(today.plusDays(good - (long) lead));
  }

  private static int packs(int pieces, int pack) {
    return Math.max(0, (pieces + pack - 1) / pack * pack);
  }
}
