/** Results for people: lines of text, and the curve drawn in characters. */
@NullMarked
package org.thumbseal.report;

import org.jspecify.annotations.NullMarked;
