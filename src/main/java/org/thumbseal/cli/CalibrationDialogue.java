package org.thumbseal.cli;

import java.io.PrintWriter;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import org.thumbseal.calibration.Calibration;
import org.thumbseal.calibration.CalibrationPoint;
import org.thumbseal.calibration.CalibrationRefused;
import org.thumbseal.json.CalibrationTree;
import org.thumbseal.json.Printable;
import org.thumbseal.link.LinkConnection;
import org.thumbseal.wire.WireRecord.Identity;
import org.thumbseal.wire.WireRecord.Reference;

/**
 * Takes one pair after another from a person at a sensor. The sensor's reading is that of the
 * moment at which the person's line is there; whatever is wrong with a line costs that line alone.
 */
final class CalibrationDialogue {
  private static final String UNDO = "undo";

  /** A new level is asked about when it is so far from the last one, kPa. */
  private static final double ANOTHER_LEVEL = 0.5;

  /** The first point of an absolute sensor is its zero; more than this is no open air, kPa. */
  private static final double OPEN_AIR = 0.5;

  /** Reads of a third of a second without a byte until a word is said. */
  private static final int SILENCE = 15;

  private final Parts parts;
  private final List<CalibrationPoint> points = new ArrayList<>();
  private @Nullable Calibration done;
  private @Nullable Double asked;
  private double zero;
  private boolean waiting;
  private int silent;

  /**
   * What a dialogue goes on between.
   *
   * @param readings of the sensor
   * @param mayWait whether the sensor waits while the person types: a recording does
   * @param typed what the person types
   * @param err what the person reads
   * @param fit makes the calibration of the pairs and of who the sensor said it is
   */
  record Parts(
      LiveReadings readings, boolean mayWait, TypedLines typed, PrintWriter err, Fit fit) {}

  /** Makes a calibration of pairs. */
  @FunctionalInterface
  interface Fit {
    Calibration of(Optional<Identity> sensor, List<CalibrationPoint> points)
        throws CalibrationRefused;
  }

  CalibrationDialogue(Parts parts) {
    this.parts = parts;
  }

  /**
   * Runs to the empty line that ends it.
   *
   * @throws Failure if the sensor or the person is gone before there is a calibration
   */
  Calibration run() {
    say("Begin with sensor and reference gauge both open to the air, then go up in steps to the");
    say("highest vacuum. At each step wait, and type what the gauge reads.");
    say("'" + UNDO + "' takes the last pair back; Enter alone ends it.");
    Calibration result = done;
    while (result == null) {
      listen();
      ask();
      answer().ifPresent(this::take);
      result = done;
    }
    return result;
  }

  private void listen() {
    int count = parts.readings().read();
    if (count == LinkConnection.LOST) {
      end("the sensor has fallen silent");
    }
    silent = count == 0 ? silent + 1 : 0;
    if (silent == SILENCE) {
      say("Nothing comes from the sensor. Is it plugged in?");
    }
  }

  /** All that was read so far, if that makes a calibration. */
  private void end(String why) {
    if (done == null) {
      finish();
    }
    if (done == null) {
      throw Failure.usage("no calibration was stored: " + why + " too early");
    }
  }

  private void ask() {
    Optional<Double> settled = parts.readings().settled();
    Double last = asked;
    boolean fresh =
        settled.isPresent() && (last == null || Math.abs(settled.get() - last) > ANOTHER_LEVEL);
    if (fresh) {
      asked = settled.get();
      waiting = true;
      say("The sensor stands at " + shown(settled.get()) + ". The gauge reads (kPa)?");
    }
  }

  private String shown(double kilopascals) {
    return isAbsolute() && points.isEmpty()
        ? PressureText.of(-kilopascals) + " absolute"
        : PressureText.of(kilopascals - zero);
  }

  private boolean isAbsolute() {
    return parts.readings().reference() == Reference.ABSOLUTE;
  }

  private Optional<TypedLines.Line> answer() {
    if (!parts.mayWait()) {
      return parts.typed().poll();
    }
    return waiting ? Optional.of(parts.typed().take()) : Optional.empty();
  }

  private void take(TypedLines.Line line) {
    waiting = false;
    if (line.isEnd()) {
      end("standard input ended");
    } else if (line.text().isBlank()) {
      finish();
    } else if (line.text().strip().equalsIgnoreCase(UNDO)) {
      takeBack();
    } else {
      try {
        pair(PressureText.kilopascals(line.text()));
      } catch (IllegalArgumentException e) {
        again(String.valueOf(e.getMessage()));
      } catch (CalibrationRefused e) {
        again(String.valueOf(e.getMessage()));
      }
    }
  }

  private void pair(double reference) throws CalibrationRefused {
    Optional<Double> settled = parts.readings().settled();
    if (settled.isEmpty()) {
      again("the sensor does not stand still: not taken; hold the vacuum and type it again");
      return;
    }
    if (isAbsolute() && points.isEmpty()) {
      zero(settled.get(), reference);
    }
    CalibrationPoint point =
        new CalibrationPoint(CalibrationTree.rounded(settled.get() - zero), reference);
    Calibration.check(point);
    if (points.contains(point)) {
      again("the very same pair is there already: not taken");
      return;
    }
    points.add(point);
    tell("Taken", point);
  }

  private void takeBack() {
    if (points.isEmpty()) {
      again("there is nothing to take back");
    } else {
      tell("Taken back", points.remove(points.size() - 1));
      asked = null;
    }
  }

  private void tell(String what, CalibrationPoint point) {
    String sensor = PressureText.of(point.sensor());
    String reference = PressureText.of(point.reference());
    say(what + ": sensor " + sensor + ", reference " + reference + ". Points: " + points.size());
  }

  /** An absolute sensor knows no vacuum until it is told where the air is. */
  private void zero(double settled, double reference) {
    if (reference > OPEN_AIR) {
      throw new IllegalArgumentException(
          "this sensor reads absolute pressure: begin with both open to the air, the gauge at 0");
    }
    zero = settled;
  }

  private void finish() {
    try {
      done = parts.fit().of(parts.readings().identity(), points);
    } catch (CalibrationRefused e) {
      again(e.getMessage() + "; what was taken is kept");
    }
  }

  private void again(String what) {
    asked = null;
    say(what);
  }

  private void say(String line) {
    parts.err().println(Printable.line(line));
    parts.err().flush();
  }
}
