package org.thumbseal.accuracy;

import static org.thumbseal.accuracy.Ranked.text;

import java.util.HashSet;
import java.util.Iterator;
import java.util.Set;
import org.thumbseal.simulate.Line;
import org.thumbseal.simulate.Scenario;
import org.thumbseal.simulate.Script;
import org.thumbseal.simulate.Sensor;
import org.thumbseal.simulate.TimedLine;
import org.thumbseal.wire.Decoded;
import org.thumbseal.wire.LineDecoder;
import org.thumbseal.wire.WireRecord;

/** How often a damaged line is taken as a sample, against the chance of a 16 bit checksum. */
final class LineFigure {
  private static final double CHANCE = 1 / 65_536.0;
  private static final double LINES_A_SECOND = 1_000;
  private static final double SIGMA = 3;

  private LineFigure() {}

  /**
   * Damages lines, each in one of four ways: bytes changed, cut, inserted, line end lost.
   *
   * @param some any scenario, for its plant
   * @param lines how many are sent
   */
  static Row of(Scenario some, int lines) {
    Scenario damaged =
        some.with(Sensor.ideal(LINES_A_SECOND))
            .with(new Line(0, 0, 1, false))
            .with(Script.quiet(lines / LINES_A_SECOND));
    Set<String> taken = new HashSet<>();
    long heard = 0;
    for (Iterator<TimedLine> each = damaged.lines(); each.hasNext(); heard++) {
      String line = each.next().line();
      if (isSample(line)) {
        taken.add(line);
      }
    }
    // A line whose end is lost, with nothing left of the next, is the line that was sent.
    damaged.with(Line.CLEAN).lines().forEachRemaining(sent -> taken.remove(sent.line()));
    double expected = heard * CHANCE;
    return Row.judged(
        "corrupted lines taken as a sample",
        "1 in 65 536",
        text("%d of %d; by chance %.1f", taken.size(), heard, expected),
        taken.size() <= expected + SIGMA * Math.sqrt(expected));
  }

  private static boolean isSample(String line) {
    return LineDecoder.decode(line) instanceof Decoded.Good good
        && good.content() instanceof WireRecord.Reading;
  }
}
