package org.thumbseal.seal;

import java.time.Instant;
import java.util.Comparator;
import java.util.Optional;
import java.util.function.BinaryOperator;
import java.util.stream.Stream;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.node.ObjectNode;

/**
 * When the documents of a trusted key were made that it is trusted for.
 *
 * @param from not before this, if there is a beginning
 * @param until not after this, if there is an end
 */
public record Validity(Optional<StatedTime> from, Optional<StatedTime> until) {
  static final String FROM = "validFrom";
  static final String UNTIL = "validUntil";

  /** No bounds. */
  static final Validity ALWAYS = new Validity(Optional.empty(), Optional.empty());

  /**
   * What a trust file says.
   *
   * @throws KeyException if a bound is neither date nor time, or the end is before the beginning
   */
  static Validity read(ObjectNode jwk) throws KeyException {
    Validity validity = new Validity(bound(jwk, FROM), bound(jwk, UNTIL));
    if (validity.isEmpty()) {
      throw new KeyException("\"" + UNTIL + "\" is before \"" + FROM + "\"");
    }
    return validity;
  }

  void write(ObjectNode jwk) {
    from.ifPresent(f -> jwk.put(FROM, f.text()));
    until.ifPresent(u -> jwk.put(UNTIL, u.text()));
  }

  boolean contains(Instant instant) {
    return from.stream().noneMatch(f -> instant.isBefore(f.first()))
        && until.stream().noneMatch(u -> instant.isAfter(u.last()));
  }

  /** Whether no instant lies in it. */
  boolean isEmpty() {
    return from.isPresent() && until.isPresent() && until.get().last().isBefore(from.get().first());
  }

  /** What lies in both. */
  Validity and(Validity other) {
    return new Validity(
        both(from, other.from, BinaryOperator.maxBy(Comparator.comparing(StatedTime::first))),
        both(until, other.until, BinaryOperator.minBy(Comparator.comparing(StatedTime::last))));
  }

  /** The bounds in words; empty when there are none. */
  public String text() {
    String start = from.map(f -> "from " + f.text()).orElse("");
    String end = until.map(u -> "until " + u.text()).orElse("");
    return (start + " " + end).strip();
  }

  private static Optional<StatedTime> both(
      Optional<StatedTime> a, Optional<StatedTime> b, BinaryOperator<StatedTime> stricter) {
    return Stream.of(a, b).flatMap(Optional::stream).reduce(stricter);
  }

  private static Optional<StatedTime> bound(ObjectNode jwk, String name) throws KeyException {
    JsonNode node = jwk.get(name);
    if (node == null) {
      return Optional.empty();
    }
    Optional<StatedTime> time = Jwk.text(jwk, name).flatMap(StatedTime::read);
    if (time.isEmpty()) {
      throw new KeyException(
          "\""
              + name
              + "\" is no date such as 2026-03-02, nor a time such as 2026-03-02T07:15:00Z");
    }
    return time;
  }
}
