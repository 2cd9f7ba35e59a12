package org.thumbseal.spares;

import java.time.LocalDate;
import java.util.Optional;
import java.util.OptionalInt;

/**
 * How it stands with a part.
 *
 * @param line of the stock file
 * @param stock what is left
 * @param demand use to come; empty where nothing is known about it
 * @param leadUse use within the lead time that is not exceeded with 95 %
 * @param orderBy last day to order; empty when later than two years or not known
 * @param amount pieces to order now; 0 when there is time
 */
public record Outlook(
    StockLine line,
    Left stock,
    Optional<Demand> demand,
    OptionalInt leadUse,
    Optional<LocalDate> orderBy,
    int amount) {
  /**
   * What is left.
   *
   * @param now pieces, 0 or more
   * @param used since they were counted; for an estimate, as many as were to be expected
   * @param miscounted whether more are used than there were: a delivery was not entered, or the
   *     count is wrong or too old
   */
  public record Left(int now, int used, boolean miscounted) {}

  /** What has to be done. */
  public enum State {
    BELOW_MINIMUM,
    ORDER_NOW,
    ENOUGH,
    USE_UNKNOWN
  }

  /** What has to be done. */
  public State state() {
    if (stock.now() < line.supply().minimum()) {
      return State.BELOW_MINIMUM;
    } else if (amount > 0) {
      return State.ORDER_NOW;
    }
    return demand.isPresent() ? State.ENOUGH : State.USE_UNKNOWN;
  }

  /** Whether somebody has to see to it today. */
  public boolean isPressing() {
    return state() == State.BELOW_MINIMUM || state() == State.ORDER_NOW;
  }
}
