/** The result directory: atomic, durable, never overwritten. */
@NullMarked
package org.thumbseal.archive;

import org.jspecify.annotations.NullMarked;
