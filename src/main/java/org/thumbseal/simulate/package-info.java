/** A pump, a jar, a sensor and a person, as bytes of the wire protocol. */
@NullMarked
package org.thumbseal.simulate;

import org.jspecify.annotations.NullMarked;
