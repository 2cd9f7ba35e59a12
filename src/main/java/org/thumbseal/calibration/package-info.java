/** From pairs of sensor and reference readings to corrected readings and their uncertainty. */
@NullMarked
package org.thumbseal.calibration;

import org.jspecify.annotations.NullMarked;
