package org.thumbseal.care;

import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Optional;

/** What is done to a pump, or happens to it; a closed list, for importers. */
public enum Work {
  /** The monthly test, which a sensor records. */
  OCCLUSION_TEST(false),
  /** The inspection by a qualified technician, electrical safety included (IEC 62353). */
  YEARLY_INSPECTION(true),
  /** Jar and tubing sterilised, by whatever procedure the hospital has. */
  STERILISATION(true),
  /** It was used on an infectious patient: jar and tubing must not wait for their month. */
  INFECTIOUS_CASE(true),
  /** It came back from repair: to be tested before it is used. */
  REPAIR(true),
  /** A fault was looked for by questions and answers. */
  TROUBLE_GUIDE(false),
  /** The sensor was held against a gauge. */
  CALIBRATION(false);

  private final boolean said;

  Work(boolean said) {
    this.said = said;
  }

  /** The name in documents and on the command line. */
  public String code() {
    return name().toLowerCase(Locale.ROOT).replace('_', '-');
  }

  /** Whether nothing but a person's word tells of it. */
  public boolean isSaid() {
    return said;
  }

  /** The work of a code; empty where there is none. */
  public static Optional<Work> of(String code) {
    return Arrays.stream(values()).filter(work -> work.code().equals(code)).findFirst();
  }

  /** Codes of all that people say. */
  public static List<String> saidCodes() {
    return Arrays.stream(values()).filter(Work::isSaid).map(Work::code).toList();
  }
}
