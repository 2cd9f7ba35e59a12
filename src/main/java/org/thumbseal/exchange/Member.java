package org.thumbseal.exchange;

import java.math.BigDecimal;
import java.time.DateTimeException;
import java.time.Instant;
import java.time.OffsetDateTime;
import java.time.ZoneOffset;
import java.time.format.DateTimeFormatter;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.stream.Collectors;
import org.thumbseal.json.DocumentView;
import org.thumbseal.seal.LedgerEntry;

/** How the text of a column is taken from a result. */
@FunctionalInterface
interface Member {
  /** As results are dated. */
  DateTimeFormatter MILLIS =
      DateTimeFormatter.ofPattern("uuuu-MM-dd'T'HH:mm:ss.SSS'Z'", Locale.ROOT)
          .withZone(ZoneOffset.UTC);

  /** Of every expanded uncertainty in a column. */
  double FACTOR = 2;

  /**
   * The text; empty where the result has none.
   *
   * @throws ResultRefused if what stands there must not get into the column
   */
  Optional<String> of(SealedResult result) throws ResultRefused;

  static Member text(String place) {
    return result -> result.view().text(place);
  }

  /** The value of a quantity or a limit. */
  static Member value(String place, String unit) {
    return result -> quantity(result, place, unit).map(q -> plain(q.value()));
  }

  /** Its expanded uncertainty. */
  static Member expanded(String place, String unit) {
    return result -> {
      Optional<Double> factor = result.view().number(place + "/coverageFactor");
      if (factor.isPresent() && factor.get() != FACTOR) {
        throw ResultRefused.because(name(place) + " has another coverage factor than 2");
      }
      return quantity(result, place, unit).flatMap(q -> q.expanded()).map(Member::plain);
    };
  }

  private static String name(String place) {
    return place.substring(1).replace('/', '.');
  }

  /** A value in another unit would be read as one in the unit of the column. */
  private static Optional<DocumentView.Measured> quantity(
      SealedResult result, String place, String unit) throws ResultRefused {
    Optional<DocumentView.Measured> quantity = result.view().quantity(place);
    if (quantity.isPresent() && !quantity.get().unit().equals(unit)) {
      throw ResultRefused.because(
          name(place) + " is not in " + unit + " but in '" + quantity.get().unit() + "'");
    }
    return quantity;
  }

  static Member startedAt() {
    return result -> {
      Optional<String> text = result.view().text("/test/startedAt");
      return text.isEmpty() ? text : Optional.of(MILLIS.format(instant(text.get())));
    };
  }

  static Instant instant(String text) throws ResultRefused {
    try {
      Instant instant = OffsetDateTime.parse(text).toInstant();
      int year = instant.atOffset(ZoneOffset.UTC).getYear();
      if (year < 1 || year > 9999) {
        throw ResultRefused.because("test.startedAt is of no year that a logbook has");
      }
      return instant;
    } catch (DateTimeException e) {
      throw ResultRefused.because("test.startedAt is no RFC 3339 time");
    }
  }

  static Member codes(String place) {
    return result ->
        words(result.view().list(place).stream().flatMap(m -> m.text("/code").stream()).toList());
  }

  /** {@code leak:0.92}: what is suggested, and how surely. */
  static Member findings() {
    return result ->
        words(
            result.view().list("/findings").stream()
                .flatMap(
                    m ->
                        m.text("/code").stream()
                            .map(
                                c ->
                                    c
                                        + m.number("/confidence")
                                            .map(s -> ":" + plain(s))
                                            .orElse("")))
                .toList());
  }

  /** The items of the checks in one state. */
  static Member checked(String state) {
    return result ->
        words(
            result.view().list("/checks").stream()
                .filter(m -> m.text("/state").equals(Optional.of(state)))
                .flatMap(m -> m.text("/item").stream())
                .toList());
  }

  /** The id of the calibration, or {@code uncalibrated}. */
  static Member calibration() {
    return result ->
        result
            .view()
            .text("/test/sensor/calibration/id")
            .or(() -> result.view().text("/test/sensor/calibration"));
  }

  static Member entry(java.util.function.Function<LedgerEntry, Object> part) {
    return result -> result.seal().entry().map(part).map(Object::toString);
  }

  private static Optional<String> words(List<String> words) {
    return words.isEmpty()
        ? Optional.empty()
        : Optional.of(
            words.stream().map(w -> w.replace(' ', '_')).collect(Collectors.joining(" ")));
  }

  /** The shortest form that means the same, never with an exponent. */
  static String plain(double value) {
    return BigDecimal.valueOf(value).stripTrailingZeros().toPlainString();
  }
}
