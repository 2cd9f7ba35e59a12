/**
 * A leak search as it is gone through at a bench, from the terminal or from the page: takes sealed
 * results as they come, and seals the answer. Other people's files are checked before they come
 * here.
 */
@NullMarked
package org.thumbseal.guided;

import org.jspecify.annotations.NullMarked;
