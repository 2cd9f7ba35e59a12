/** Seeded mutators that throw spoilt input at everything that reads bytes of unknown origin. */
@NullMarked
package org.thumbseal.fuzz;

import org.jspecify.annotations.NullMarked;
