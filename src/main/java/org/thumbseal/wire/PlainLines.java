package org.thumbseal.wire;

import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalLong;
import java.util.regex.Pattern;
import org.thumbseal.quantity.PressureUnit;
import org.thumbseal.quantity.TimeScale;
import org.thumbseal.wire.Decoded.Good;
import org.thumbseal.wire.Decoded.Rejected;
import org.thumbseal.wire.WireRecord.Plain;

/**
 * Lines of a board that prints numbers, without a checksum. A line counts only as a whole: one that
 * has anything more or less than the format says is no reading.
 *
 * <p>Written {@code lines:column=2,columns=3,unit=kPa,sign=vacuum,time=1:ms} or {@code
 * lines:/P=(?<p>\S+)/,unit=Pa,sign=gauge}.
 */
public final class PlainLines implements LineFormat {
  /** Plain decimals only: what else a number can be written like, damage can write too. */
  private static final Pattern NUMBER = Pattern.compile("[-+]?[0-9]{1,10}(\\.[0-9]{0,9})?");

  private static final double MICROS = 1e6;

  /** Both {@code millis()} and {@code micros()} of the usual boards have 32 bits. */
  private static final double TICKS = 4_294_967_296.0;

  private final String text;
  private final LineCells cells;
  private final Meaning meaning;

  /**
   * What the numbers of a line mean.
   *
   * @param unit of the pressure
   * @param sense of the pressure
   * @param time unit of the sensor's own time, where it prints one
   * @param range values outside it are no readings, Pa as a sensor would send them
   * @param told whether the user gave the range: then its ends are the ends of the sensor
   */
  record Meaning(
      PressureUnit unit,
      PressureSense sense,
      Optional<TimeScale> time,
      PressureRange range,
      boolean told) {}

  PlainLines(String text, LineCells cells, Meaning meaning) {
    this.text = text;
    this.cells = cells;
    this.meaning = meaning;
  }

  /** Whether a text is meant as the written form. */
  public static boolean isMeant(String text) {
    return text.startsWith(LineFormatText.BEGIN);
  }

  /**
   * Reads the written form.
   *
   * @throws LineFormatException if it is not of that form, or a unit is not known
   */
  public static PlainLines parse(String text) throws LineFormatException {
    return LineFormatText.parse(text);
  }

  /** The written form, without blanks at its ends: what a capture keeps. */
  public String text() {
    return text;
  }

  @Override
  public Optional<PlainLines> plain() {
    return Optional.of(this);
  }

  /** Whether each line carries the sensor's own time; without it, arrival is all there is. */
  public boolean isTimed() {
    return meaning.time().isPresent();
  }

  /** What the readings count from; vacuum becomes negative gauge pressure. */
  public WireRecord.Reference reference() {
    return meaning.sense().reference();
  }

  /** The range of the sensor, Pa, where the user gave it. */
  public Optional<PressureRange> range() {
    return Optional.of(meaning.range()).filter(r -> meaning.told());
  }

  /** After so many microseconds the printed time begins anew at 0, if it is a count of ticks. */
  public OptionalLong wrapMicros() {
    return meaning
        .time()
        .filter(scale -> scale == TimeScale.MICROSECOND || scale == TimeScale.MILLISECOND)
        .map(scale -> OptionalLong.of(micros(scale, TICKS)))
        .orElseGet(OptionalLong::empty);
  }

  @Override
  public Decoded decode(String line) {
    if (line.length() > LineDecoder.LONGEST_LINE) {
      return new Rejected(RejectCause.TOO_LONG);
    }
    return cells
        .of(line)
        .flatMap(this::reading)
        .map(this::inRange)
        .orElseGet(PlainLines::noReading);
  }

  private static Decoded noReading() {
    return new Rejected(RejectCause.MALFORMED);
  }

  private Optional<Plain> reading(LineCells.Cells found) {
    OptionalDouble pressure = number(found.pressure());
    OptionalDouble time = found.time().map(PlainLines::number).orElseGet(OptionalDouble::empty);
    if (pressure.isEmpty() || time.isPresent() != isTimed()) {
      return Optional.empty();
    }
    double pascals = meaning.sense().signed(meaning.unit().toPascals(pressure.getAsDouble()));
    OptionalLong micros =
        meaning
            .time()
            .map(scale -> OptionalLong.of(micros(scale, time.orElseThrow())))
            .orElseGet(OptionalLong::empty);
    return Optional.of(new Plain(micros, pascals));
  }

  private Decoded inRange(Plain reading) {
    return meaning.range().holds(reading.pascals())
        ? new Good(reading)
        : new Rejected(RejectCause.IMPLAUSIBLE);
  }

  private static OptionalDouble number(String cell) {
    return NUMBER.matcher(cell).matches()
        ? OptionalDouble.of(Double.parseDouble(cell))
        : OptionalDouble.empty();
  }

  private static long micros(TimeScale scale, double value) {
    return Math.round(scale.toSeconds(value) * MICROS);
  }
}
