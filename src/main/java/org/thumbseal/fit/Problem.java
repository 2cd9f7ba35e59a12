package org.thumbseal.fit;

/** A curve and the points it is to be laid through. */
record Problem(CurveModel model, Points points) {

  /** Point minus curve, for each point. */
  double[] residuals(double[] parameters) {
    double[] residuals = new double[points.size()];
    for (int i = 0; i < residuals.length; i++) {
      residuals[i] = points.y(i) - model.value(parameters, points.x(i));
    }
    return residuals;
  }

  /** Derivatives of the curve by the parameters, one row a point. */
  double[][] derivatives(double[] parameters) {
    double[][] rows = new double[points.size()][parameters.length];
    for (int i = 0; i < rows.length; i++) {
      model.gradient(parameters, points.x(i), rows[i]);
    }
    return rows;
  }

  boolean hasTooFewPoints() {
    return points.size() <= model.parameterCount();
  }

  /** Root of the sum of the squared ordinates: the size of a difference that matters. */
  double ordinateNorm() {
    double sum = 0;
    for (int i = 0; i < points.size(); i++) {
      sum += points.y(i) * points.y(i);
    }
    return Math.sqrt(sum);
  }

  static double norm(double[] values) {
    double sum = 0;
    for (double value : values) {
      sum += value * value;
    }
    return Math.sqrt(sum);
  }
}
