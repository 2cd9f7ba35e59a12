package org.thumbseal.grade;

import java.util.Locale;

/** Why a verdict is what it is; a closed list that importers rely on. */
public enum ReasonCode {
  RISE_IN_TIME,
  RISE_SLOW,
  RISE_NOT_REACHED,
  MAXIMUM_REACHED,
  MAXIMUM_LOW,
  OPEN_VACUUM_HIGH,
  NEAR_LIMIT,
  RISE_FASTER_THAN_USUAL,
  OCCLUSION_SLIPPED,
  RELEASED_EARLY,
  GAP_IN_TEST,
  RANGE_CLIPPED,
  ZERO_DRIFT,
  CALIBRATION_OVERDUE,
  CLOCK_UNSTEADY,
  SENSOR_FAULT,
  ALTITUDE_ADJUSTED,
  NOT_BLOCKED,
  UNCHECKED_LINE;

  /** The name in result documents. */
  public String code() {
    return name().toLowerCase(Locale.ROOT).replace('_', '-');
  }
}
