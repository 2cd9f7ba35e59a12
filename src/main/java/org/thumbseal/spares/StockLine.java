package org.thumbseal.spares;

import java.time.LocalDate;
import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Optional;

/**
 * A part that is kept in stock.
 *
 * @param part its name, as it is said at the bench
 * @param item what it is put into, such as {@code gasket}
 * @param count how many there were on which day
 * @param supply how more are had
 * @param saidPerMonth use a month as a person estimates it, for what no check records
 * @param others cells of the columns that are only kept
 */
public record StockLine(
    String part,
    String item,
    Count count,
    Supply supply,
    Optional<Double> saidPerMonth,
    Map<String, String> others) {
  /** Keeps the cells in their order. */
  public StockLine {
    others = Collections.unmodifiableMap(new LinkedHashMap<>(others));
  }

  /**
   * A count of the shelf.
   *
   * @param quantity pieces, 0 or more
   * @param on the day, at whose end they were counted
   */
  public record Count(int quantity, LocalDate on) {}

  /**
   * How more are had.
   *
   * @param minimum pieces below which the stock is not to fall
   * @param leadDays days from order to arrival
   * @param pack pieces that are sold together, 1 or more
   * @param onOrder pieces ordered that have not come yet
   */
  public record Supply(int minimum, int leadDays, int pack, int onOrder) {}
}
