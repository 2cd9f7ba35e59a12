package org.thumbseal.simulate;

/**
 * How pump and inlet stand at a moment.
 *
 * @param speed of the motor over its full speed, 0 to 1
 * @param opening of the inlet, 0 (blocked) to 1 (open)
 */
record Setting(double speed, double opening) {
  static final Setting RUNNING_BLOCKED = new Setting(1, 0);
}
