/** Wire protocol 1: lines, checksum, records, and what can be wrong with them. */
@NullMarked
package org.thumbseal.wire;

import org.jspecify.annotations.NullMarked;
