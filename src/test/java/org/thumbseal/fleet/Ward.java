package org.thumbseal.fleet;

import java.util.Locale;

/** The places of the hospital. */
public enum Ward {
  EMERGENCY(2, "Emergency"),
  THEATRE_1(4, "Theatre 1"),
  THEATRE_2(6, "Theatre 2"),
  RECOVERY(8, "Recovery"),
  MATERNITY(10, "Maternity"),
  NEWBORN(12, "Newborn unit"),
  CHILDREN(14, "Children's ward"),
  WARD_1(16, "Ward 1"),
  WARD_2(18, "Ward 2"),
  WARD_3(20, "Ward 3"),
  OUTPATIENTS(22, "Outpatients");

  private final int day;
  private final String title;

  Ward(int day, String title) {
    this.day = day;
    this.title = title;
  }

  /** Its name. */
  public String title() {
    return title;
  }

  /** On which day of the month its round begins. */
  int day() {
    return day;
  }

  /** The wards share two sensors. */
  String sensor() {
    return String.format(Locale.ROOT, "tp-%02d", day % 4 == 2 ? 1 : 2);
  }
}
