/** Physical quantities, their units and their uncertainty; uses nothing else. */
@NullMarked
package org.thumbseal.quantity;

import org.jspecify.annotations.NullMarked;
