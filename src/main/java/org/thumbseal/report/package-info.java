/** Curves and pages for people. */
@NullMarked
package org.thumbseal.report;

import org.jspecify.annotations.NullMarked;
