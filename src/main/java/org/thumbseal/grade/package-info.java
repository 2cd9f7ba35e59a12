/** Criteria, decision rule, verdict with its reasons. */
@NullMarked
package org.thumbseal.grade;

import org.jspecify.annotations.NullMarked;
