package org.thumbseal.fit;

import java.util.Arrays;
import java.util.Optional;
import org.hipparchus.linear.Array2DRowRealMatrix;
import org.hipparchus.linear.ArrayRealVector;
import org.hipparchus.linear.QRDecomposition;
import org.hipparchus.linear.RealMatrix;

/**
 * Partial derivatives, one row a point, with the columns brought to unit length.
 *
 * <p>Works on a QR decomposition and never on J'J, whose condition is the square: the parameters of
 * a short rise are correlated to better than 0.999.
 */
final class Jacobian {
  /** What is left of a unit column beside the others; below this it is rounding. */
  private static final double SINGULAR = 1e-11;

  private final double[][] rows;
  private final double[] norms;
  private final QRDecomposition decomposition;

  private Jacobian(double[][] rows, double[] norms, QRDecomposition decomposition) {
    this.rows = rows;
    this.norms = norms;
    this.decomposition = decomposition;
  }

  /** Empty where a derivative is not finite or the columns are not independent. */
  static Optional<Jacobian> of(double[][] rows) {
    double[] norms = columnNorms(rows);
    if (!Arrays.stream(norms).allMatch(n -> n > 0 && n < Double.POSITIVE_INFINITY)) {
      return Optional.empty();
    }
    QRDecomposition qr = new QRDecomposition(scaled(rows, norms), SINGULAR);
    return qr.getSolver().isNonSingular()
        ? Optional.of(new Jacobian(rows, norms, qr))
        : Optional.empty();
  }

  /** The step that brings the sum of squares of {@code right - J step} to its least. */
  double[] solve(double[] right) {
    double[] step = decomposition.getSolver().solve(new ArrayRealVector(right)).toArray();
    for (int j = 0; j < step.length; j++) {
      step[j] /= norms[j];
    }
    return step;
  }

  /** Length of the change of the curve that a small step of the parameters brings. */
  double lengthOf(double[] step) {
    double sum = 0;
    for (double[] row : rows) {
      double change = 0;
      for (int j = 0; j < step.length; j++) {
        change += row[j] * step[j];
      }
      sum += change * change;
    }
    return Math.sqrt(sum);
  }

  /** (J'J)^-1. */
  double[][] inverseOfNormalMatrix() {
    int n = norms.length;
    RealMatrix triangle = decomposition.getR().getSubMatrix(0, n - 1, 0, n - 1);
    RealMatrix inverse = new QRDecomposition(triangle).getSolver().getInverse();
    double[][] product = inverse.multiplyTransposed(inverse).getData();
    for (int i = 0; i < n; i++) {
      for (int j = 0; j < n; j++) {
        product[i][j] /= norms[i] * norms[j];
      }
    }
    return product;
  }

  private static double[] columnNorms(double[][] rows) {
    double[] norms = new double[rows[0].length];
    for (double[] row : rows) {
      for (int j = 0; j < norms.length; j++) {
        norms[j] += row[j] * row[j];
      }
    }
    Arrays.setAll(norms, j -> Math.sqrt(norms[j]));
    return norms;
  }

  private static RealMatrix scaled(double[][] rows, double[] norms) {
    double[][] unit = new double[rows.length][norms.length];
    for (int i = 0; i < rows.length; i++) {
      double[] row = rows[i];
      Arrays.setAll(unit[i], j -> row[j] / norms[j]);
    }
    return new Array2DRowRealMatrix(unit, false);
  }
}
