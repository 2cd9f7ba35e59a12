/** The quantities of one test with their uncertainty budgets. */
@NullMarked
package org.thumbseal.measurement;

import org.jspecify.annotations.NullMarked;
