/** The records index: what the sealed documents say, in a database; made anew from them at will. */
@NullMarked
package org.thumbseal.index;

import org.jspecify.annotations.NullMarked;
