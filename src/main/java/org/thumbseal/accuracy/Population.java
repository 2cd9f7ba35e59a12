package org.thumbseal.accuracy;

import java.util.List;
import java.util.stream.LongStream;
import org.thumbseal.simulate.Breadth;
import org.thumbseal.simulate.FaultKind;
import org.thumbseal.simulate.PumpHistory;

/**
 * Pumps drawn from a seed.
 *
 * @param pumps how many
 * @param seed where their own seeds begin
 */
record Population(int pumps, long seed) {
  /** Far apart, so that neighbouring seeds of two runs share no pump. */
  private static final long APART = 1_000_003;

  /** Half of the pumps are sound; the others are weak, slow, leaking or held back. */
  private static final List<FaultKind> MEASURED =
      List.of(
          FaultKind.NONE,
          FaultKind.LEAK,
          FaultKind.NONE,
          FaultKind.WORN_VALVES,
          FaultKind.NONE,
          FaultKind.LOST_SPEED,
          FaultKind.NONE,
          FaultKind.CONTROL_NOT_AT_MAXIMUM,
          FaultKind.NONE,
          FaultKind.LEAK);

  private static final List<FaultKind> ALL = List.of(FaultKind.values());

  LongStream indexes() {
    return LongStream.range(0, pumps);
  }

  /** A pump for the figures of measurement and verdict. */
  PumpHistory measured(long index) {
    return history(MEASURED, index, Breadth.USUAL);
  }

  /** A pump for the findings: every kind as often as every other. */
  PumpHistory found(long index) {
    return history(ALL, index, Breadth.WIDE);
  }

  private PumpHistory history(List<FaultKind> kinds, long index, Breadth breadth) {
    FaultKind kind = kinds.get((int) (index % kinds.size()));
    return PumpHistory.of(kind, seed * APART + index, breadth);
  }
}
