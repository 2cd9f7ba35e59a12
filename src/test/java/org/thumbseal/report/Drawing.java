package org.thumbseal.report;

import java.util.ArrayList;
import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/** Reads a drawing as a person with a ruler does: by the numbers at its axes. */
final class Drawing {
  private static final Pattern LABEL =
      Pattern.compile(
          "<text x=\"([-0-9.]+)\" y=\"([-0-9.]+)\" text-anchor=\"(end|middle)\">(-?[0-9]+)</text>");
  private static final Pattern NUMBER = Pattern.compile("([MLHV]?)\\s*(-?[0-9]+\\.?[0-9]*)");

  private final String svg;
  private final Scale across;
  private final Scale upwards;

  /** Two marks of an axis: places in the drawing, and what is written there. */
  private record Scale(double place0, double value0, double place1, double value1) {
    double value(double place) {
      return value0 + (place - place0) / (place1 - place0) * (value1 - value0);
    }
  }

  /** A point in the units of the axes. */
  record At(double seconds, double kilopascals) {}

  Drawing(String svg) {
    this.svg = svg;
    List<double[]> horizontal = new ArrayList<>();
    List<double[]> vertical = new ArrayList<>();
    Matcher label = LABEL.matcher(svg);
    while (label.find()) {
      double value = Double.parseDouble(label.group(4));
      if (label.group(3).equals("middle")) {
        horizontal.add(new double[] {Double.parseDouble(label.group(1)), value});
      } else {
        vertical.add(new double[] {Double.parseDouble(label.group(2)) - 4, value});
      }
    }
    across = scale(horizontal);
    upwards = scale(vertical);
  }

  private static Scale scale(List<double[]> marks) {
    double[] first = marks.get(0);
    double[] last = marks.get(marks.size() - 1);
    return new Scale(first[0], first[1], last[0], last[1]);
  }

  /** The corners of the first line of a class. */
  List<At> line(String name) {
    Matcher path = Pattern.compile("class=\"" + name + "\" d=\"([^\"]*)\"").matcher(svg);
    if (!path.find()) {
      return List.of();
    }
    List<At> corners = new ArrayList<>();
    Matcher number = NUMBER.matcher(path.group(1));
    double x = 0;
    double y = 0;
    boolean second = false;
    while (number.find()) {
      double value = Double.parseDouble(number.group(2));
      if (number.group(1).equals("V") || second) {
        y = value;
        second = false;
      } else {
        x = value;
        second = !number.group(1).equals("H");
      }
      if (!second) {
        corners.add(new At(across.value(x), upwards.value(y)));
      }
    }
    return corners;
  }
}
