package org.thumbseal.trend;

/**
 * Exact distribution of Kendall's S when nothing is there but chance: all orders of n different
 * values are equally likely. The number of pairs in the wrong order has the generating function of
 * (1)(1+q)(1+q+q2)... / n! (Kendall, Rank Correlation Methods); several series tested together are
 * the product of theirs.
 */
final class KendallDistribution {
  /** share[d]: the share of orders with d pairs the wrong way round. */
  private double[] share = {1};

  /** Adds a series of so many values, independent of what is there. */
  KendallDistribution and(int count) {
    for (int factors = 2; factors <= count; factors++) {
      share = spread(share, factors);
    }
    return this;
  }

  private static double[] spread(double[] share, int over) {
    double[] wider = new double[share.length + over - 1];
    for (int d = 0; d < share.length; d++) {
      for (int k = 0; k < over; k++) {
        wider[d + k] += share[d] / over;
      }
    }
    return wider;
  }

  /** Probability of an S of at least this size; S is the number of pairs less twice those wrong. */
  double atLeast(int s) {
    double sum = 0;
    for (int d = 0; d < share.length && share.length - 1 - 2 * d >= s; d++) {
      sum += share[d];
    }
    return sum;
  }
}
