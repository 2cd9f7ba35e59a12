package org.thumbseal.simulate;

/**
 * How pump and inlet stand at a moment.
 *
 * @param speed of the motor over its full speed, 0 to 1
 * @param opening of the inlet, 0 (blocked) to 1 (open)
 * @param pinched whether the hose between jar and pump is
 */
record Setting(double speed, double opening, boolean pinched) {
  static final Setting RUNNING_BLOCKED = new Setting(1, 0);

  Setting(double speed, double opening) {
    this(speed, opening, false);
  }

  /** Speed of a motor that draws from the jar. */
  double drawing() {
    return pinched ? 0 : speed;
  }

  /** How far the valves of a pump that rests are open to the jar, 0 to 1. */
  double resting() {
    return pinched ? 0 : 1 - speed;
  }
}
