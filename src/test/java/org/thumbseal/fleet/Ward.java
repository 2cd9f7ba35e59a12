package org.thumbseal.fleet;

import java.util.Locale;

/** The places of the hospital. */
public enum Ward {
  EMERGENCY("Emergency"),
  THEATRE_1("Theatre 1"),
  THEATRE_2("Theatre 2"),
  RECOVERY("Recovery"),
  MATERNITY("Maternity"),
  NEWBORN("Newborn unit"),
  CHILDREN("Children's ward"),
  WARD_1("Ward 1"),
  WARD_2("Ward 2"),
  WARD_3("Ward 3"),
  OUTPATIENTS("Outpatients");

  private final String title;

  Ward(String title) {
    this.title = title;
  }

  /** Its name. */
  public String title() {
    return title;
  }

  /** On which day of the month its round begins. */
  int day() {
    return 2 + 2 * ordinal();
  }

  /** The wards share two sensors. */
  String sensor() {
    return String.format(Locale.ROOT, "tp-%02d", 1 + ordinal() % 2);
  }
}
