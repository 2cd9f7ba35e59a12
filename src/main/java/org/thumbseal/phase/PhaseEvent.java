package org.thumbseal.phase;

/** What the detector sees while it is happening. */
public sealed interface PhaseEvent {
  /**
   * A new phase, as soon as it can be told.
   *
   * @param seconds device time of its begin, s
   * @param kilopascals vacuum when it was told, on the sensor's own zero, kPa
   */
  record Entered(Phase phase, double seconds, double kilopascals) implements PhaseEvent {}

  /** A test has ended and can be measured. */
  record Tested(TestWindow window) implements PhaseEvent {}

  /** A start was said, and the inlet was not blocked in time. */
  record NotBlocked(UnblockedWindow window) implements PhaseEvent {}
}
