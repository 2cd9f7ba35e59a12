package org.thumbseal.fit;

import java.util.Optional;

/** A fit, or why there is none. */
public sealed interface FitOutcome {

  /** The fit, where there is one. */
  default Optional<FitResult> result() {
    return this instanceof Converged converged ? Optional.of(converged.fit()) : Optional.empty();
  }

  /** The least sum of squares was found. */
  record Converged(FitResult fit) implements FitOutcome {}

  /** No curve that could be relied on. */
  record Refused(Reason reason) implements FitOutcome {}

  /** Why a fit was refused. */
  enum Reason {
    /** No more points than parameters, so nothing would be left to judge the fit by. */
    TOO_FEW_POINTS,
    /** No minimum was reached from the start values. */
    NOT_CONVERGED,
    /** The points do not tell the parameters apart. */
    UNDETERMINED
  }
}
