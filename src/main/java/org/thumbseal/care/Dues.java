package org.thumbseal.care;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/**
 * Works out what is due. A month after 31 January is the last day of February, as {@link
 * LocalDate#plusMonths}. What was never done is due since the pump is in service, else since
 * yesterday: nobody can say that it is in time.
 */
public final class Dues {
  private static final Comparator<Due> ORDER =
      Comparator.comparing((Due due) -> due.term().on())
          .thenComparing(due -> due.pump().location())
          .thenComparing(due -> due.pump().id())
          .thenComparing(Due::work);

  private final Map<String, List<Deed>> deeds = new HashMap<>();
  private final LocalDate today;

  private Dues(List<Deed> deeds, LocalDate today) {
    this.today = today;
    deeds.forEach(
        deed -> this.deeds.computeIfAbsent(deed.asset(), a -> new ArrayList<>()).add(deed));
  }

  /**
   * Everything that will ever be due, the earliest first.
   *
   * @param pumps those that are looked after
   * @param deeds what the records tell, in any order; a deed after today is left out
   * @param today at the place
   */
  public static List<Due> of(List<CaredFor> pumps, List<Deed> deeds, LocalDate today) {
    List<Deed> past = deeds.stream().filter(deed -> !deed.on().isAfter(today)).toList();
    Dues dues = new Dues(past, today);
    return pumps.stream().flatMap(pump -> dues.of(pump).stream()).sorted(ORDER).toList();
  }

  /** A sensor that is to be calibrated again, by the term that its calibration names. */
  public static Due calibration(String sensor, Due.Term term, LocalDate today) {
    CaredFor cared = CaredFor.known(sensor);
    return new Due(cared, Work.CALIBRATION, term, Urgency.of(term.on(), today));
  }

  private List<Due> of(CaredFor pump) {
    Intervals intervals = pump.terms().intervals();
    List<Due> found = new ArrayList<>();
    found.add(due(pump, Work.OCCLUSION_TEST, test(pump, intervals.test())));
    found.add(
        due(
            pump,
            Work.YEARLY_INSPECTION,
            plain(pump, Work.YEARLY_INSPECTION, intervals.inspection())));
    sterilisation(pump, intervals.sterilisation())
        .ifPresent(term -> found.add(due(pump, Work.STERILISATION, term)));
    return found;
  }

  private Due due(CaredFor pump, Work work, Due.Term term) {
    return new Due(pump, work, term, Urgency.of(term.on(), today));
  }

  private Due.Term test(CaredFor pump, int months) {
    Due.Term plain = plain(pump, Work.OCCLUSION_TEST, months);
    return after(pump, Work.REPAIR, plain, Cause.AFTER_REPAIR).orElse(plain);
  }

  private Optional<Due.Term> sterilisation(CaredFor pump, int months) {
    Due.Term plain = plain(pump, Work.STERILISATION, Math.max(1, months));
    Optional<Due.Term> infected =
        after(pump, Work.INFECTIOUS_CASE, plain, Cause.AFTER_INFECTIOUS_CASE);
    return infected.or(() -> months == 0 ? Optional.empty() : Optional.of(plain));
  }

  /** What made it due before its term, on the very day. */
  private Optional<Due.Term> after(CaredFor pump, Work event, Due.Term plain, Cause cause) {
    return last(pump, event)
        .map(Deed::on)
        .filter(day -> plain.last().map(day::isAfter).orElse(true))
        .map(day -> new Due.Term(day, plain.last(), cause));
  }

  private Due.Term plain(CaredFor pump, Work work, int months) {
    Optional<Deed> last = last(pump, work);
    if (last.isEmpty()) {
      LocalDate since = pump.terms().inService().orElse(today.minusDays(1));
      return new Due.Term(since, Optional.empty(), Cause.NEVER_DONE);
    }
    LocalDate on = last.get().on();
    return switch (last.get().outcome()) {
      case IN_ORDER -> new Due.Term(on.plusMonths(months), Optional.of(on), Cause.TERM);
      case NOT_IN_ORDER -> new Due.Term(on, Optional.of(on), Cause.NOT_IN_ORDER);
      case UNDECIDED -> undecided(pump, work, months);
    };
  }

  /** It counts for nothing: the term of the one before runs on, but it is due at once. */
  private Due.Term undecided(CaredFor pump, Work work, int months) {
    Optional<Deed> before =
        all(pump, work).stream()
            .filter(deed -> deed.outcome() != Deed.Outcome.UNDECIDED)
            .reduce((first, second) -> second);
    LocalDate tried = last(pump, work).map(Deed::on).orElse(today);
    LocalDate due =
        before
            .filter(deed -> deed.outcome() == Deed.Outcome.IN_ORDER)
            .map(deed -> deed.on().plusMonths(months))
            .filter(term -> term.isBefore(tried))
            .orElse(tried);
    Cause cause =
        before.filter(deed -> deed.outcome() == Deed.Outcome.NOT_IN_ORDER).isPresent()
            ? Cause.NOT_IN_ORDER
            : Cause.UNDECIDED;
    return new Due.Term(due, before.map(Deed::on), cause);
  }

  /** Of several on one day the last that was told; those of a day are in the order of the list. */
  private Optional<Deed> last(CaredFor pump, Work work) {
    return all(pump, work).stream().reduce((first, second) -> second);
  }

  private List<Deed> all(CaredFor pump, Work work) {
    return deeds.getOrDefault(pump.id(), List.of()).stream()
        .filter(deed -> deed.work() == work)
        .sorted(Comparator.comparing(Deed::on))
        .toList();
  }
}
