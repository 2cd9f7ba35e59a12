/** How good the measurement is: the whole pipeline on pumps whose truth is known. */
@NullMarked
package org.thumbseal.accuracy;

import org.jspecify.annotations.NullMarked;
