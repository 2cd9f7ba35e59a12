package org.thumbseal.spares;

import java.time.LocalDate;
import java.util.List;

/**
 * All parts as they stand on a day.
 *
 * @param today that day
 * @param parts in the order of the stock file
 * @param unclear uses that could not be told to a part, because none or several fit
 */
public record Stock(LocalDate today, List<Outlook> parts, List<Use> unclear) {
  /** Keeps copies. */
  public Stock {
    parts = List.copyOf(parts);
    unclear = List.copyOf(unclear);
  }

  /** What is to be ordered now in the order of the file. */
  public List<Outlook> orders() {
    return parts.stream().filter(p -> p.amount() > 0).toList();
  }

  /** Whether somebody has to see to one of them today. */
  public boolean isPressing() {
    return parts.stream().anyMatch(Outlook::isPressing);
  }
}
