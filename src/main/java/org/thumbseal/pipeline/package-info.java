/** From a record of lines or samples to graded results: the same live and in replay. */
@NullMarked
package org.thumbseal.pipeline;

import org.jspecify.annotations.NullMarked;
