package org.thumbseal.simulate;

import java.util.OptionalDouble;

/**
 * What one occlusion test really was: without noise, ripple and sensor errors.
 *
 * @param occludedAt when the inlet was blocked, true time since the first sample, s
 * @param endedAt when it was opened again, or the recording ended, s
 * @param openVacuum mean over the last 2 s (or what there was) of the open phase, kPa
 * @param targetRise rise that is timed, kPa: 65, times ambient over 101.325 kPa where ambient is
 *     below 98 kPa
 * @param riseTime from occludedAt until the vacuum stood targetRise above openVacuum, s; empty if
 *     it never did, or if the thumb slipped
 * @param maximumVacuum highest 1 s mean while blocked, kPa; empty if blocked for less, or if the
 *     thumb slipped
 * @param plant what was tested
 */
public record TestTruth(
    double occludedAt,
    double endedAt,
    double openVacuum,
    double targetRise,
    OptionalDouble riseTime,
    OptionalDouble maximumVacuum,
    Plant plant) {}
