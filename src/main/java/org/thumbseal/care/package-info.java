/**
 * What a pump needs besides its test, when it was done last, and when it is due again. Pure: today
 * is a value.
 */
@NullMarked
package org.thumbseal.care;

import org.jspecify.annotations.NullMarked;
