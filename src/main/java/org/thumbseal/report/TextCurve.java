package org.thumbseal.report;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import org.thumbseal.measurement.Measurement;
import org.thumbseal.pipeline.CurvePoints.Point;
import org.thumbseal.record.ResultDocument;

/**
 * The rise as a drawing of plain characters, with the corridor it has to stay in: the level it must
 * reach and the time it has for that, and the maximum it must go on to.
 */
public final class TextCurve {
  private static final int COLUMNS = 60;
  private static final int ROWS = 16;
  private static final double FIRST_SECOND = -2;
  private static final double LEAST_SPAN = 15;
  private static final double LONGEST_SPAN = 60;
  private static final char CURVE = '*';

  private final double last;
  private final double top;
  private final char[][] cells = new char[ROWS][COLUMNS];
  private final String[] labels = new String[ROWS];

  private TextCurve(double last, double top) {
    this.last = last;
    this.top = top;
    for (char[] row : cells) {
      Arrays.fill(row, ' ');
    }
    Arrays.fill(labels, "");
  }

  /** The lines of the drawing of a test, without their ends; there must have been a blocking. */
  public static List<String> lines(ResultDocument result, List<Point> points) {
    double blocked = test(result).quality().blockedSeconds();
    double last = Math.min(LONGEST_SPAN, Math.max(LEAST_SPAN, blocked + 2));
    double highest = points.stream().mapToDouble(Point::kilopascals).max().orElse(100);
    TextCurve curve =
        new TextCurve(
            last,
            10
                * Math.ceil(
                    Math.max(highest, result.grade().limits().maximumKilopascals()) / 10 + 0.3));
    curve.corridor(result);
    points.forEach(p -> curve.set(curve.column(p.seconds()), curve.row(p.kilopascals()), CURVE));
    return curve.drawn();
  }

  private static Measurement test(ResultDocument result) {
    return result.measurement().orElseThrow();
  }

  private void corridor(ResultDocument result) {
    double open = test(result).openVacuum().value();
    double rise = open + result.grade().limits().riseKilopascals();
    double time = result.grade().criteria().riseSeconds();
    int end = column(time);
    for (int c = column(0); c <= end; c++) {
      set(c, row(rise), '-');
    }
    for (int r = row(rise); r < ROWS; r++) {
      set(end, r, '|');
    }
    double maximum = result.grade().limits().maximumKilopascals();
    for (int c = end; c < COLUMNS; c++) {
      set(c, row(maximum), '=');
    }
    label(
        row(rise),
        format("-- +%.1f kPa within %.0f s", result.grade().limits().riseKilopascals(), time));
    label(row(maximum), format("== at least %.1f kPa", maximum));
  }

  private void label(int row, String text) {
    if (row >= 0 && row < ROWS) {
      labels[row] = "  " + text;
    }
  }

  private int column(double seconds) {
    return (int) Math.round((seconds - FIRST_SECOND) / (last - FIRST_SECOND) * (COLUMNS - 1));
  }

  private int row(double kilopascals) {
    return (int) Math.round((ROWS - 1) * (1 - kilopascals / top));
  }

  private void set(int column, int row, char c) {
    if (column >= 0 && column < COLUMNS && row >= 0 && row < ROWS) {
      cells[row][column] = c;
    }
  }

  private List<String> drawn() {
    List<String> lines = new ArrayList<>();
    for (int r = 0; r < ROWS; r++) {
      String axis = r % 5 == 0 ? format("%4.0f |", top * (1 - r / (ROWS - 1.0))) : "     |";
      lines.add((axis + new String(cells[r]) + labels[r]).stripTrailing());
    }
    lines.add("kPa  +" + "-".repeat(COLUMNS));
    char[] ticks = new char[COLUMNS + 8];
    Arrays.fill(ticks, ' ');
    for (int s = 0; s <= last; s += 5) {
      String text = Integer.toString(s);
      text.getChars(0, text.length(), ticks, 6 + column(s));
    }
    lines.add(new String(ticks).stripTrailing() + " s since the inlet was blocked");
    return lines;
  }

  private static String format(String format, Object... values) {
    return String.format(Locale.ROOT, format, values);
  }
}
