package org.thumbseal.care;

import java.time.LocalDate;

/** How soon something is due, most urgent first. */
public enum Urgency {
  /** Its day is over. */
  OVERDUE,
  /** Today or one of the six days after it. */
  THIS_WEEK,
  /** Within 31 days from today. */
  THIS_MONTH,
  /** After that. */
  LATER;

  private static final int WEEK = 7;
  private static final int MONTH = 31;

  /** How soon that day is. */
  static Urgency of(LocalDate due, LocalDate today) {
    if (due.isBefore(today)) {
      return OVERDUE;
    }
    if (due.isBefore(today.plusDays(WEEK))) {
      return THIS_WEEK;
    }
    return due.isBefore(today.plusDays(MONTH)) ? THIS_MONTH : LATER;
  }
}
