package org.thumbseal.care;

import java.time.LocalDate;
import java.util.Optional;

/**
 * One thing that is to be done to one pump.
 *
 * @param pump to which
 * @param work what
 * @param term when and why
 * @param urgency how soon, seen from today
 */
public record Due(CaredFor pump, Work work, Term term, Urgency urgency) {
  /**
   * When and why.
   *
   * @param on the last day on which it is in time
   * @param last when it was done last
   * @param cause why it is due then
   */
  public record Term(LocalDate on, Optional<LocalDate> last, Cause cause) {}
}
