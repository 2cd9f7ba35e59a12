/**
 * What the values of many tests of one pump say together: whether they go somewhere, where they
 * jumped, and when a limit is reached. Pure: no clock, no input and output.
 */
@NullMarked
package org.thumbseal.trend;

import org.jspecify.annotations.NullMarked;
