package org.thumbseal.register;

import java.util.Arrays;
import java.util.Locale;
import java.util.Optional;
import java.util.stream.Collectors;

/** Where a pump stands in its life. */
public enum Status {
  /** It is on a ward or ready for one. */
  IN_USE,
  /** Lent, at a workshop, or not to be found: for the time being nothing is due. */
  AWAY,
  /** It will not be used any more. */
  RETIRED;

  /** Its word in the register. */
  public String code() {
    return name().toLowerCase(Locale.ROOT).replace('_', '-');
  }

  static Optional<Status> of(String code) {
    return Arrays.stream(values()).filter(s -> s.code().equals(code)).findFirst();
  }

  static String all() {
    return Arrays.stream(values()).map(Status::code).collect(Collectors.joining(", "));
  }
}
