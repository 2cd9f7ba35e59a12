/**
 * What is handed on with a pump that goes to a qualified technician, out of its sealed records:
 * which tests to show, what was looked at, what was never tried. Pure.
 */
@NullMarked
package org.thumbseal.refer;

import org.jspecify.annotations.NullMarked;
