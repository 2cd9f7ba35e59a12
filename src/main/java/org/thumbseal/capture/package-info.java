/** Capture files and tables of other people, read and written. */
@NullMarked
package org.thumbseal.capture;

import org.jspecify.annotations.NullMarked;
