package org.thumbseal.fit;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.stream.IntStream;

/** A data file of the NIST StRD for nonlinear regression, with the values it certifies. */
final class NistDataset {
  private static final int FIRST_PARAMETER_LINE = 41;
  private static final int FIRST_DATA_LINE = 61;

  private final List<String> lines;

  private NistDataset(List<String> lines) {
    this.lines = lines;
  }

  static NistDataset named(String name) throws IOException {
    return new NistDataset(Files.readAllLines(Path.of("fixtures/nist", name + ".dat")));
  }

  /** The response stands before the predictor in these files. */
  Points points() {
    double[][] rows =
        lines.stream()
            .skip(FIRST_DATA_LINE - 1L)
            .map(NistDataset::numbers)
            .toArray(double[][]::new);
    return Points.of(column(rows, 1), column(rows, 0));
  }

  /** Start values, 1 or 2. */
  double[] start(int which) {
    return parameterColumn(which - 1);
  }

  double[] certifiedParameters() {
    return parameterColumn(2);
  }

  double[] certifiedStandardDeviations() {
    return parameterColumn(3);
  }

  double certified(String label) {
    return lines.stream()
        .filter(line -> line.startsWith(label + ":"))
        .mapToDouble(line -> Double.parseDouble(line.substring(label.length() + 1).strip()))
        .findFirst()
        .orElseThrow();
  }

  private double[] parameterColumn(int column) {
    return column(
        IntStream.range(FIRST_PARAMETER_LINE - 1, lines.size())
            .mapToObj(lines::get)
            .takeWhile(line -> line.contains("="))
            .map(line -> numbers(line.substring(line.indexOf('=') + 1)))
            .toArray(double[][]::new),
        column);
  }

  private static double[] column(double[][] rows, int column) {
    return List.of(rows).stream().mapToDouble(row -> row[column]).toArray();
  }

  private static double[] numbers(String line) {
    return List.of(line.strip().split("\\s+")).stream().mapToDouble(Double::parseDouble).toArray();
  }
}
