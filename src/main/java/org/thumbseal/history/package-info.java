/** The tests of one pump over the years, and of many pumps which one needs somebody first. Pure. */
@NullMarked
package org.thumbseal.history;

import org.jspecify.annotations.NullMarked;
