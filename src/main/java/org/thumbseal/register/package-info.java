/**
 * The list of pumps that a site keeps in a spreadsheet: read whole, or refused with all that is
 * wrong in it.
 */
@NullMarked
package org.thumbseal.register;

import org.jspecify.annotations.NullMarked;
