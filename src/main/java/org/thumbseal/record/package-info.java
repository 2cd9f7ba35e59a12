/** The result document as plain records. */
@NullMarked
package org.thumbseal.record;

import org.jspecify.annotations.NullMarked;
