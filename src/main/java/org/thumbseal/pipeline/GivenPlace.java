package org.thumbseal.pipeline;

import java.util.Optional;

/**
 * What is said of the place of the test, and kept there.
 *
 * @param ambientKilopascals barometric pressure, kPa
 * @param altitudeMetres altitude, m; used where no pressure is known
 * @param pumps what is known of the pumps there
 */
public record GivenPlace(
    Optional<Double> ambientKilopascals, Optional<Double> altitudeMetres, KnownPumps pumps) {
  /** Nothing said. */
  public static final GivenPlace NONE = of(Optional.empty(), Optional.empty());

  /** A place of whose pumps nothing is known. */
  public static GivenPlace of(
      Optional<Double> ambientKilopascals, Optional<Double> altitudeMetres) {
    return new GivenPlace(ambientKilopascals, altitudeMetres, KnownPumps.NONE);
  }

  /** The same with these pumps known. */
  GivenPlace withPumps(KnownPumps known) {
    return new GivenPlace(ambientKilopascals, altitudeMetres, known);
  }

  /** Of it only what no header of a record holds. */
  GivenPlace besidesHeader() {
    return NONE.withPumps(pumps);
  }
}
