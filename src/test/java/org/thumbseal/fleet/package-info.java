/**
 * A district hospital that does not exist: its pumps, what becomes of them, and three years of
 * tests.
 */
@NullMarked
package org.thumbseal.fleet;

import org.jspecify.annotations.NullMarked;
