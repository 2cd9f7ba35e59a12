package org.thumbseal.cli;

import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneId;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import org.thumbseal.index.IndexedPart;
import org.thumbseal.index.Records;
import org.thumbseal.index.RecordsException;
import org.thumbseal.register.Register;
import org.thumbseal.register.RegisteredAsset;
import org.thumbseal.register.Status;
import org.thumbseal.spares.Use;

/**
 * What the records say about parts.
 *
 * @param first day of the first test; empty where there is none
 * @param uses every part that was put in
 */
record PartsUsed(Optional<LocalDate> first, List<Use> uses) {
  /** Asks the records; pumps that the register calls retired foretell nothing. */
  static PartsUsed of(Records records, Optional<Register> register, LocalDate today)
      throws RecordsException {
    ZoneId zone = ZoneId.systemDefault();
    Set<String> retired =
        register.stream()
            .flatMap(r -> r.assets().stream())
            .filter(a -> a.status() == Status.RETIRED)
            .map(RegisteredAsset::id)
            .collect(Collectors.toSet());
    Instant end = today.plusDays(1).atStartOfDay(zone).toInstant();
    List<Use> uses =
        records.parts(Optional.empty(), Instant.EPOCH, end).stream()
            .flatMap(part -> use(part, zone, retired).stream())
            .toList();
    return new PartsUsed(records.firstTest().map(at -> LocalDate.ofInstant(at, zone)), uses);
  }

  private static Optional<Use> use(IndexedPart part, ZoneId zone, Set<String> retired) {
    boolean foretells = part.asset().filter(retired::contains).isEmpty();
    return part.at()
        .map(at -> new Use(LocalDate.ofInstant(at, zone), part.item(), part.part(), foretells));
  }
}
