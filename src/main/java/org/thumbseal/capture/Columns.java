package org.thumbseal.capture;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Function;
import java.util.stream.Collectors;
import org.thumbseal.quantity.PressureUnit;
import org.thumbseal.quantity.TimeScale;
import org.thumbseal.wire.PressureSense;

/**
 * Which columns of a table hold time and pressure, and in what units.
 *
 * <p>Written {@code time=<name or number>[:unit],pressure=<name or
 * number>[:unit][:gauge|:absolute|:vacuum]}. Numbers count from 1. A unit may be left out where the
 * name of the column ends in it or holds it in brackets, as in {@code Pressure [kPa]} or {@code
 * p_kPa}, and for ISO 8601 times. Where it is not said what they count from, pressures are gauge,
 * negative under vacuum, unless they begin like ambient pressure.
 */
public final class Columns {
  private static final String FORM =
      "time=<name or number>[:unit],pressure=<name or number>[:unit][:gauge|:absolute|:vacuum]";

  /** The column of times. */
  record Time(String name, Optional<TimeScale> scale) {}

  /** The column of pressures. */
  record Pressure(String name, Optional<PressureUnit> unit, Optional<PressureSense> sense) {}

  private final String text;
  private final Time time;
  private final Pressure pressure;

  private Columns(String text, Time time, Pressure pressure) {
    this.text = text;
    this.time = time;
    this.pressure = pressure;
  }

  /**
   * Reads the written form.
   *
   * @throws CaptureFormatException if it is not of that form, or a unit is not known
   */
  public static Columns parse(String text) throws CaptureFormatException {
    Map<String, String> parts = new LinkedHashMap<>();
    for (String part : text.split(",(?=[^,=]*=)", -1)) {
      int equals = part.indexOf('=');
      String key = equals < 0 ? part : part.substring(0, equals).strip();
      if (!List.of("time", "pressure").contains(key) || parts.containsKey(key)) {
        throw new CaptureFormatException("columns: '" + part + "' does not fit; write " + FORM);
      }
      parts.put(key, part.substring(equals + 1));
    }
    return new Columns(
        text, timeOf(segments(parts, "time")), pressureOf(segments(parts, "pressure")));
  }

  /** The written form. */
  public String text() {
    return text;
  }

  Time time() {
    return time;
  }

  Pressure pressure() {
    return pressure;
  }

  private static List<String> segments(Map<String, String> parts, String key)
      throws CaptureFormatException {
    List<String> segments =
        Arrays.stream(parts.getOrDefault(key, "").split(":", -1)).map(String::strip).toList();
    if (segments.get(0).isEmpty()) {
      throw new CaptureFormatException("columns: no " + key + " column; write " + FORM);
    }
    return segments;
  }

  private static Time timeOf(List<String> segments) throws CaptureFormatException {
    String expected = "one unit of time (" + TimeScale.SYMBOLS + ")";
    Suffixes suffixes = new Suffixes(segments.subList(1, segments.size()), expected);
    Optional<TimeScale> scale = suffixes.take(TimeScale::ofSymbol);
    suffixes.finish();
    return new Time(segments.get(0), scale);
  }

  private static Pressure pressureOf(List<String> segments) throws CaptureFormatException {
    String expected = "one unit of pressure (" + symbols() + ") and gauge, absolute or vacuum";
    Suffixes suffixes = new Suffixes(segments.subList(1, segments.size()), expected);
    Optional<PressureUnit> unit = suffixes.take(PressureUnit::ofSymbol);
    Optional<PressureSense> sense = suffixes.take(PressureSense::ofName);
    suffixes.finish();
    return new Pressure(segments.get(0), unit, sense);
  }

  /** For error messages. */
  static String symbols() {
    return Arrays.stream(PressureUnit.values())
        .map(PressureUnit::symbol)
        .collect(Collectors.joining(", "));
  }

  /** What stands behind the name, in any order, each at most once. */
  private static final class Suffixes {
    private final List<String> left;
    private final String expected;

    Suffixes(List<String> texts, String expected) {
      this.left = new ArrayList<>(texts);
      this.expected = expected;
    }

    /** Takes the first one that has a meaning here. */
    <T> Optional<T> take(Function<String, Optional<T>> lookup) {
      Optional<String> known = left.stream().filter(t -> lookup.apply(t).isPresent()).findFirst();
      known.ifPresent(left::remove);
      return known.flatMap(lookup);
    }

    void finish() throws CaptureFormatException {
      if (!left.isEmpty()) {
        throw new CaptureFormatException(
            "columns: ':"
                + left.get(0)
                + "' does not fit; behind the name may stand "
                + expected
                + " (a name with a colon in it is given by its number)");
      }
    }
  }
}
