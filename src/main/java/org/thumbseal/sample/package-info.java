/** Samples on the sensor's own clock, gaps, restarts, and the tie to arrival time. */
@NullMarked
package org.thumbseal.sample;

import org.jspecify.annotations.NullMarked;
